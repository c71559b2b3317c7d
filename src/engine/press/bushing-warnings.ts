import type { BushingAnswer, BushingQuestion } from './bushing.ts';
import type { HeatLimit } from './bushing-heat.ts';
import { flattened, type PressStress } from './bushing-stress.ts';
import { isLess, isMore, isNegative, zero, type Length } from '../length/length.ts';
import { leastBushingWall, leastParentWall, leastWallSource } from '../fit/tables/least-walls.ts';
import type { Material } from '../material/tables/materials.ts';
import {
  bushingSetShare,
  crackShare,
  mostHeatByCondition,
  yieldShare,
  type Condition,
} from './tables/press-practice.ts';

/** What speaks against it; `say-bushing.ts` has the sentences. To stop for, or to mind. */
export type BushingWarning = { readonly weighs: 'stop' | 'mind' } & (
  | {
      readonly code: 'thin-bushing' | 'thin-part';
      readonly wall: Length;
      readonly least: Length;
      readonly source: string;
    }
  | {
      readonly code: 'yields' | 'near-yield' | 'takes-a-set';
      readonly what: 'part' | 'bushing';
      readonly material: string;
      readonly stressMpa: number;
      readonly yieldMpa: number;
      readonly own: boolean;
    }
  | {
      readonly code: 'may-crack';
      readonly material: string;
      readonly hoopMpa: number;
      readonly bearableMpa: number;
    }
  | { readonly code: 'no-grip'; readonly least: Length; readonly flattened: Length; readonly turned: boolean }
  | {
      readonly code: 'loose-when-hot' | 'loose-when-cold' | 'seizes';
      readonly celsius: number;
      readonly left: Length;
    }
  | { readonly code: 'spoilt-when-hot'; readonly celsius: number; readonly most: HeatLimit }
  | { readonly code: 'no-way-in'; readonly most: HeatLimit }
  | { readonly code: 'plating-fumes' }
  | { readonly code: 'draws-soft'; readonly mostCelsius: number }
  | { readonly code: 'bore-after-pressing' }
  | { readonly code: 'band-too-wide' | 'pin-read-too-coarse' }
);

type Found = Omit<BushingAnswer, 'warnings'>;

/**
 * Thin walls, stress past yield, crack risk, grip that isn't there, and heat that would spoil the part: by the readings as
 * they are, with one more warning where the far ends of their band are worse.
 *
 * Units:   the part's equivalent stress and the bushing's against the low end of their yield; a thin bushing may take a
 *          small set. Cast iron, which doesn't
 *          yield, and hardened parts by a third of tensile strength.
 * Source:  tables/least-walls.ts, tables/press-practice.ts; strengths from memory unless the user gave his own.
 */
export function findBushingWarnings(
  q: BushingQuestion,
  { likely, worst }: { readonly likely: Found; readonly worst: Found },
): readonly BushingWarning[] {
  const warnings = warningsOf(q, likely);
  const said = new Set(warnings.filter(isStop).map(nameOf));
  const isWorse = warningsOf(q, worst).some((warning) => isStop(warning) && !said.has(nameOf(warning)));
  return isWorse ? [...warnings, { weighs: 'mind', code: 'band-too-wide' }] : warnings;
}

function isStop({ weighs }: BushingWarning): boolean {
  return weighs === 'stop';
}

function nameOf(warning: BushingWarning): string {
  return `${warning.code} ${'what' in warning ? warning.what : ''}`;
}

function warningsOf(q: BushingQuestion, found: Found): readonly BushingWarning[] {
  return [
    ...thinWalls(q, found),
    ...grip(q, found),
    ...seizes(q, found),
    ...(found.stressInUse ? stressWarnings(q, found.stressInUse) : []),
    ...heat(q, found),
    ...(found.insideProvable ? [] : [{ weighs: 'mind' as const, code: 'pin-read-too-coarse' as const }]),
    ...(found.stress && !found.insideBefore
      ? [{ weighs: 'mind' as const, code: 'bore-after-pressing' as const }]
      : []),
  ].sort((a, b) => Number(a.weighs === 'mind') - Number(b.weighs === 'mind'));
}

function thinWalls(q: BushingQuestion, { bushingWall, partWall, hole }: Found): readonly BushingWarning[] {
  const leastInner = q.leastBushingWall ?? leastBushingWall[q.shop ?? 'in'];
  const leastOuter = q.leastWall ?? leastParentWall(hole.upper);
  const ownInner = q.leastBushingWall ? leastWallSource.own : leastWallSource.bushing;
  const ownOuter = q.leastWall ? leastWallSource.own : leastWallSource.besideHole;
  return [
    ...(isLess(bushingWall, leastInner)
      ? [
          {
            weighs: 'stop' as const,
            code: 'thin-bushing' as const,
            wall: bushingWall,
            least: leastInner,
            source: ownInner,
          },
        ]
      : []),
    ...(partWall && isLess(partWall, leastOuter)
      ? [
          {
            weighs: 'stop' as const,
            code: 'thin-part' as const,
            wall: partWall,
            least: leastOuter,
            source: ownOuter,
          },
        ]
      : []),
  ];
}

function grip(
  q: BushingQuestion,
  { interference, interferenceHot, interferenceCold }: Found,
): readonly BushingWarning[] {
  const { least, leastAfterFlattening } = interference;
  // Planned by the class alone, both parts may lie at the far end of it; turned to the measured bore they don't.
  const weighs = q.reamed ? 'stop' : 'mind';
  if (!isMore(leastAfterFlattening, zero))
    return [
      { weighs, code: 'no-grip', least, flattened: flattened(q.finish), turned: q.reamed !== undefined },
    ];
  const lost = (code: 'loose-when-hot' | 'loose-when-cold', celsius?: number, left?: Length) =>
    celsius === undefined || !left || isMore(left, zero)
      ? []
      : [{ weighs: 'stop' as const, code, celsius, left }];
  return [
    ...lost('loose-when-hot', q.hotCelsius, interferenceHot),
    ...lost('loose-when-cold', q.coldestCelsius, interferenceCold),
  ];
}

function seizes({ hotCelsius, coldestCelsius }: BushingQuestion, found: Found): readonly BushingWarning[] {
  const { insideFit, running } = found;
  // What is pressed on its pin has no clearance to lose.
  if (!running || isNegative(insideFit.clearance.lower)) return [];
  const gone = (celsius?: number, left?: Length) =>
    celsius !== undefined && left && isNegative(left)
      ? [{ weighs: 'stop' as const, code: 'seizes' as const, celsius, left }]
      : [];
  return [...gone(hotCelsius, running.hot), ...gone(coldestCelsius, running.cold)];
}

type Stressed = Pick<BushingQuestion, 'part' | 'bushing' | 'partYieldMpa' | 'bushingYieldMpa'> & {
  readonly condition?: Condition;
};

/** What the press alone does to both parts: past yield, near it, or a crack. */
export function stressWarnings(q: Stressed, stress: PressStress): readonly BushingWarning[] {
  return [
    ...yieldWarning('part', q.part, stress.part.equivalentMpa, q.partYieldMpa),
    ...yieldWarning('bushing', q.bushing, stress.bushing.equivalentMpa, q.bushingYieldMpa),
    ...cracks(q, stress),
  ];
}

function yieldWarning(
  what: 'part' | 'bushing',
  material: Material,
  stressMpa: number,
  own: number | undefined,
): readonly BushingWarning[] {
  const yieldMpa = own ?? material.yieldMpa?.low;
  if (yieldMpa === undefined || stressMpa < yieldMpa * yieldShare) return [];
  const figures = { what, material: material.name, stressMpa, yieldMpa, own: own !== undefined };
  if (stressMpa < yieldMpa) return [{ weighs: 'mind', code: 'near-yield', ...figures }];
  const isSpoilt = stressMpa > yieldMpa * bushingSetShare;
  return what === 'bushing' && !isSpoilt
    ? [{ weighs: 'mind', code: 'takes-a-set', ...figures }]
    : [{ weighs: 'stop', code: 'yields', ...figures }];
}

function cracks({ part, condition }: Stressed, stress: PressStress): readonly BushingWarning[] {
  const isBrittle = part.yieldMpa === undefined || condition === 'hardened';
  const bearableMpa = part.tensileMpa.low * crackShare;
  if (!isBrittle || stress.part.hoopMpa <= bearableMpa) return [];
  return [
    { weighs: 'stop', code: 'may-crack', material: part.name, hoopMpa: stress.part.hoopMpa, bearableMpa },
  ];
}

function heat({ condition, hotCelsius }: BushingQuestion, found: Found): readonly BushingWarning[] {
  const { heat: ways, mostHeat: most } = found;
  return [
    ...(hotCelsius !== undefined && hotCelsius > most.celsius
      ? [{ weighs: 'stop' as const, code: 'spoilt-when-hot' as const, celsius: hotCelsius, most }]
      : []),
    ...(ways.some(({ allowed }) => allowed)
      ? []
      : [{ weighs: 'mind' as const, code: 'no-way-in' as const, most }]),
    ...(condition === 'plated' ? [{ weighs: 'mind' as const, code: 'plating-fumes' as const }] : []),
    ...(condition === 'hardened'
      ? [
          {
            weighs: 'mind' as const,
            code: 'draws-soft' as const,
            mostCelsius: mostHeatByCondition.hardened,
          },
        ]
      : []),
  ];
}
