import { inShopWords } from '../../engine/length/american-words.ts';
import { sayAssumed } from '../../engine/reading/say-assumed.ts';
import type { CuttingTool, Operation, Threading } from '../../engine/cut/cut.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { saySpot } from '../../engine/cut/say-spot.ts';
import { sayCompound } from '../../engine/cut/say-compound.ts';
import { sayThreading } from '../../engine/cut/say-threading.ts';
import { saySetOver } from '../../engine/cut/say-set-over.ts';
import type { CutKind } from '../../engine/length/metal-on.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Cut, CutState, Machine } from '../../store/base/records.ts';

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
export function measuredOn({ of, threading }: Pick<Cut, 'of' | 'threading'>): string {
  if (threading) return 'over the wires';
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
export function usualMachine({
  operation,
  of,
  part,
  at,
}: Pick<Cut, 'operation' | 'of' | 'part'> & { readonly at?: unknown }): Machine {
  if (at !== undefined) return 'mill';
  if (operation === 'tap') return 'bench';
  if (operation === 'drill' || operation === 'ream') return 'drill-press';
  const isInAPart = part === 'bore' || part === 'hole' || part === 'recess' || of.startsWith('slot');
  return isInAPart ? 'mill' : 'lathe';
}

/** What was scrapped or made again is no part of the job any more: whatever it was cut to says nothing. */
export function countsStill({ state }: Pick<Cut, 'state'>): boolean {
  return state !== 'scrapped' && state !== 'made-again';
}

/** There is metal to come off yet, or too much has come off. */
export function isStillOpen({ state }: Pick<Cut, 'state'>): boolean {
  return state === 'to-cut' || state === 'cutting' || state === 'over';
}

/** What is said of the part's strength wherever a cut is asked for that isn't made yet; empty for one that is. */
export function strengthOf(cut: Pick<Cut, 'state' | 'name' | 'part' | 'operation' | 'of'>): string {
  return isStillOpen(cut) ? sayStrengthOfCut(cut) : '';
}

/** A drill, a reamer and a tap have one size: they are run through, not planned in passes. */
export function hasItsOwnSize({ operation }: Pick<Cut, 'operation'>): boolean {
  return operation === 'drill' || operation === 'ream' || operation === 'tap';
}

/** How the work is set over for a cut off its middle, or the compound for a tapered one; empty for any other. */
export function setOverWords(
  { setOver, setOverWithin, compoundDegrees }: Cut,
  unit: ShownUnit,
): readonly string[] {
  return [
    ...(setOver ? saySetOver({ by: setOver.exact, within: setOverWithin?.exact }, unit) : []),
    ...(compoundDegrees === undefined ? [] : sayCompound(Number(compoundDegrees), unit)),
  ];
}

/** How a thread is cut, and what it is measured over; empty for any other cut. */
export function threadingWords(cut: Cut, unit: ShownUnit): readonly string[] {
  const threading = threadingOf(cut);
  return threading ? sayThreading(threading, cut.blank?.exact, unit) : [];
}

/** All that is set before a cut is begun. */
export function setUpWords(cut: Cut, unit: ShownUnit): readonly string[] {
  return [...setOverWords(cut, unit), ...threadingWords(cut, unit)];
}

/** How a thread is cut and what it is measured over, as the engine sees it. */
export function threadingOf({ threading }: Pick<Cut, 'threading'>): Threading | undefined {
  return threading && { ...threading, wire: threading.wire.exact, pitch: threading.pitch.exact };
}

/** Where a hole stands that is set by coordinates: `at 2.250, −1.125 from the zero`; empty for any other cut. */
export function placeWords({ stands }: Pick<Cut, 'stands'>, unit: ShownUnit): string {
  return stands ? `at ${saySpot({ x: stands.x.exact, y: stands.y.exact }, unit)} from the zero` : '';
}

/** What a cut's figures hang on; empty where nothing was assumed. */
export function assumedOf({ assumed }: Pick<Cut, 'assumed'>): string {
  return sayAssumed(assumed === undefined ? [] : [assumed]);
}

/** "Stainless 303", in the shop's words; text of a newer Slipfit stands as it is. */
export function materialWords(material: string | undefined, unit: ShownUnit): string {
  if (material === undefined) return 'material not said';
  const name = materialNamed(material)?.name.replace(/ \(.*/, '');
  return name === undefined ? material : inShopWords(name, unit);
}
