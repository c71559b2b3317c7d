// A zero check holds while the app is open, not for ever: it is kept in memory only, so that a reload asks for it again.
const checkedAt = new Map<string, number>();
// Chosen, not published: one working day.
const HOLDS_FOR_MS = 10 * 60 * 60 * 1000;

/** Whether the tool's zero was checked (closed jaws or a gauge block) since the app was opened, today. */
export function isZeroChecked(toolId: string, now: number): boolean {
  const at = checkedAt.get(toolId);
  return at !== undefined && now - at < HOLDS_FOR_MS;
}

export function noteZeroCheck(toolId: string, now: number | undefined): void {
  if (now === undefined) checkedAt.delete(toolId);
  else checkedAt.set(toolId, now);
}
