import { dividedBy, largest, minus, plus, smallest, type Length } from '../../engine/length/length.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import type { RingQuestion } from '../../engine/worksheets/ring/ring.ts';
import type { RingBlank } from '../../engine/worksheets/ring/ring-blank.ts';
import {
  usualRingClearances,
  type RingClearance,
} from '../../engine/worksheets/ring/tables/ring-practice.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

/** The clearances a ring gets, outside and inside: the usual ones by what locates it, or one's own. */
export function ringClearances(data: WorksheetData): {
  readonly outside: RingClearance;
  readonly inside: RingClearance;
} {
  const { locates, free } = usualRingClearances[data.unit];
  const byStem = data.worksheet.choices['locates'] === 'stem';
  return {
    outside: ownClearance(data, byStem ? free : locates, ['outLeast', 'outMost']),
    inside: ownClearance(data, byStem ? locates : free, ['inLeast', 'inMost']),
  };
}

/** The question a ring worksheet asks the engine, once the recess and the stem have a size. */
export function ringQuestion(data: WorksheetData): RingQuestion | undefined {
  const { sizes } = data.worksheet;
  const recess = knownSize(data, sizes['recess']);
  const stem = knownSize(data, sizes['stem']);
  if (!recess || !stem) return undefined;
  const depth = knownSize(data, sizes['depth']);
  const stayFree = exactSize(data, sizes['stayFree']);
  const leastThickness = exactSize(data, sizes['leastThickness']);
  const clearances = ringClearances(data);
  const dial = { reads: data.dial.reads, graduation: data.dial.graduation.exact };
  return {
    recess: { tightest: recess.tightest, loosest: recess.loosest },
    stem: { tightest: stem.tightest, loosest: stem.loosest },
    outsideClearance: clearances.outside,
    insideClearance: clearances.inside,
    ...(depth && { depth: depth.tightest }),
    ...(stayFree && { stayFree }),
    ...(leastThickness && { leastThickness }),
    blanks: [...washerInHand(data), ...blanksOnHand(data)],
    steps: { diameter: sizeStep('outside', dial), length: sizeStep('length', dial) },
  };
}

function ownClearance(
  data: WorksheetData,
  usual: RingClearance,
  [leastName, mostName]: readonly [string, string],
): RingClearance {
  const least = exactSize(data, data.worksheet.sizes[leastName]);
  const most = exactSize(data, data.worksheet.sizes[mostName]);
  if (!least && !most) return usual;
  const room = minus(usual.upper, usual.lower);
  const lower = least ?? smallest(usual.lower, most ?? usual.lower);
  const upper = most ?? largest(usual.upper, plus(lower, room));
  return { lower, upper, aim: dividedBy(plus(lower, upper), 2), source: 'your own limits' };
}

function washerInHand(data: WorksheetData): readonly RingBlank[] {
  const { sizes } = data.worksheet;
  const outside = exactSize(data, sizes['blankOutside']);
  const inside = exactSize(data, sizes['blankInside']);
  const thickness = exactSize(data, sizes['blankThickness']);
  if (!outside && !inside && !thickness) return [];
  return [blankOf('in-hand', 'The washer in hand', { outside, inside, thickness })];
}

/** Whatever lies in the drawer with a hole in it: washers, spacers, shims. */
function blanksOnHand(data: WorksheetData): readonly RingBlank[] {
  return data.drawer.flatMap(({ piece, count }) => {
    const hasHole = piece.kind === 'washer' || piece.kind === 'spacer' || piece.kind === 'shim';
    if (!hasHole || count <= 0) return [];
    const { outside, inside, thickness } = piece;
    const sizes = {
      outside: exactSize(data, outside),
      inside: exactSize(data, inside),
      thickness: exactSize(data, thickness),
    };
    return [blankOf(piece.id, piece.name, sizes)];
  });
}

type BlankSizes = {
  readonly outside: Length | undefined;
  readonly inside: Length | undefined;
  readonly thickness: Length | undefined;
};

function blankOf(id: string, name: string, { outside, inside, thickness }: BlankSizes): RingBlank {
  return {
    id,
    name,
    ...(outside && { outside }),
    ...(inside && { inside }),
    ...(thickness && { thickness }),
  };
}
