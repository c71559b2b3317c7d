const DEEDS =
  /^(Added|Changed|Closed|Counted|Done|Kept|Made|Make|Moved|Not done|Put|Re-checked|Read|Removed|Replaced|Set|Struck|Swapped|Took)\b/;

/** "Undo: changed M8 bolt"; a label that begins with a name keeps its letter. */
export function undoWords(label: string): string {
  return `Undo: ${label.replace(DEEDS, (deed) => deed.toLowerCase())}`;
}
