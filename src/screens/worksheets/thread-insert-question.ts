import { bandOf, mean } from '../../engine/reading/estimate.ts';
import type { InsertQuestion } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { threadNamed } from '../../engine/thread/threads.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

/** The question a thread-insert worksheet asks the engine; a hole that isn't given is solid metal. */
export function threadInsertQuestion(data: WorksheetData): InsertQuestion | undefined {
  const { sizes, choices } = data.worksheet;
  const thread = choices['thread'] === undefined ? undefined : threadNamed(choices['thread']);
  if (!thread) return undefined;
  const hole = knownSize(data, sizes['hole']);
  // The floor under a blind hole, and what an insert holds in, are least where the metal is thinnest.
  const metal = knownSize(data, sizes['thickness'])?.least;
  const leastFloor = exactSize(data, sizes['leastFloor']);
  const leastWall = exactSize(data, sizes['leastWall']);
  const wall = wallOf(data);
  return {
    thread,
    metal: choices['metal'] === 'steel' ? 'steel' : 'aluminium',
    ...(hole && { hole: { tightest: hole.tightest, loosest: hole.loosest } }),
    ...(wall && { wall }),
    ...(metal && { thickness: mean(metal), thicknessOff: bandOf(metal).halfWidth }),
    ...(leastFloor && { leastFloor }),
    ...(leastWall && { leastWall }),
    ...(choices['bottom'] === 'blind' && {
      blind: { tap: choices['tap'] === 'plug' ? 'plug' : 'bottoming' },
    }),
  };
}

// From the centre is the surer of the two: it doesn't move when the hole does.
function wallOf(data: WorksheetData): InsertQuestion['wall'] {
  const distance = exactSize(data, data.worksheet.sizes['centreToEdge']);
  if (distance) return { kind: 'centre-to-edge', distance };
  const wall = exactSize(data, data.worksheet.sizes['wall']);
  return wall && { kind: 'present', wall };
}
