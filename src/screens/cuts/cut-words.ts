import { sayAssumed } from '../../engine/reading/say-assumed.ts';
import type { CuttingTool, Operation } from '../../engine/cut/cut.ts';
import type { CutKind } from '../../engine/length/metal-on.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import type { Cut, CutState, Machine } from '../../store/records.ts';

/** States in the order of the work: what is on the machine first, what is done with last. */
export const CUT_STATES: readonly CutState[] = [
  'cutting',
  'over',
  'to-cut',
  'to-size',
  'scrapped',
  'made-again',
];

export const STATE_WORDS: Readonly<Record<CutState, string>> = {
  'to-cut': 'to cut',
  cutting: 'cutting',
  'to-size': 'to size',
  over: 'over',
  scrapped: 'scrapped',
  'made-again': 'made again',
};

export const MACHINES: readonly Machine[] = ['lathe', 'mill', 'drill-press', 'bench'];

export const MACHINE_WORDS: Readonly<Record<Machine, string>> = {
  lathe: 'lathe',
  mill: 'mill',
  'drill-press': 'drill press',
  bench: 'bench',
};

export const TOOL_WORDS: Readonly<Record<CuttingTool, string>> = { hss: 'HSS', carbide: 'carbide' };

/** What is done, as it is chosen for a cut of one's own. */
export const OPERATIONS: readonly {
  readonly id: string;
  readonly words: string;
  readonly more: string;
  readonly operation: Operation;
  readonly of: CutKind;
}[] = [
  {
    id: 'turn',
    words: 'Turn an outside',
    more: 'a diameter becomes smaller',
    operation: 'turn',
    of: 'outside',
  },
  { id: 'face', words: 'Face to length', more: 'a length or thickness', operation: 'face', of: 'length' },
  { id: 'bore', words: 'Bore', more: 'a diameter becomes larger', operation: 'bore', of: 'bore' },
  { id: 'ring', words: 'Ring, outside', more: 'thin metal on a mandrel', operation: 'ring', of: 'outside' },
  { id: 'recess', words: 'Recess, deeper', more: 'its depth', operation: 'bore', of: 'recess-depth' },
  { id: 'slot', words: 'Slot, wider', more: 'its width', operation: 'face', of: 'slot-width' },
  { id: 'slot-depth', words: 'Slot, deeper', more: 'its depth', operation: 'face', of: 'slot-depth' },
  { id: 'drill', words: 'Drill', more: 'a hole', operation: 'drill', of: 'tap-drill' },
  { id: 'ream', words: 'Ream', more: 'a hole to size', operation: 'ream', of: 'bore' },
  { id: 'tap', words: 'Tap', more: 'the hole inside its threads', operation: 'tap', of: 'tap-drill' },
];

/** What is measured on it: "on diameter". */
export function measuredOn(of: CutKind): string {
  switch (of) {
    case 'outside':
    case 'bore':
    case 'tap-drill':
      return 'on diameter';
    case 'length':
      return 'on length';
    case 'recess-depth':
    case 'slot-depth':
      return 'on depth';
    case 'slot-width':
      return 'on width';
    default:
      return of satisfies never;
  }
}

/** The machine it is usually done on: what is held in a chuck on the lathe, a hole in a part elsewhere. */
export function usualMachine({ operation, of, part }: Pick<Cut, 'operation' | 'of' | 'part'>): Machine {
  if (operation === 'tap') return 'bench';
  if (operation === 'drill' || operation === 'ream') return 'drill-press';
  const isInAPart = part === 'bore' || part === 'hole' || part === 'recess' || of.startsWith('slot');
  return isInAPart ? 'mill' : 'lathe';
}

/** What was scrapped or made again is no part of the job any more: whatever it was cut to says nothing. */
export function countsStill({ state }: Pick<Cut, 'state'>): boolean {
  return state !== 'scrapped' && state !== 'made-again';
}

/** A drill, a reamer and a tap have one size: they are run through, not planned in passes. */
export function hasItsOwnSize({ operation }: Pick<Cut, 'operation'>): boolean {
  return operation === 'drill' || operation === 'ream' || operation === 'tap';
}

/** What a cut's figures hang on; empty where nothing was assumed. */
export function assumedOf({ assumed }: Pick<Cut, 'assumed'>): string {
  return sayAssumed(assumed === undefined ? [] : [assumed]);
}

/** "Stainless 303"; text of a newer Slipfit stands as it is. */
export function materialWords(material: string | undefined): string {
  if (material === undefined) return 'material not said';
  return materialNamed(material)?.name.replace(/ \(.*/, '') ?? material;
}
