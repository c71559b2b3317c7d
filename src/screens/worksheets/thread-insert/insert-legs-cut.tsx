import { isZero, plus, ratioOf, zero, type Length } from '../../../engine/length/length.ts';
import type { InsertLength } from '../../../engine/thread/insert-lengths.ts';

type LegSize = {
  readonly thickness: Length | undefined;
  readonly insert: InsertLength | undefined;
  readonly isBlind: boolean;
};

/** A leg in the drawing, from its left face to its right one, and as much of that as its insert fills. */
export type LegSlot = {
  readonly left: number;
  readonly right: number;
  readonly isKnown: boolean;
  readonly isBlind: boolean;
  readonly filled: number | undefined;
};

const GAP = 14;
// A leg's figure stands over it: narrower than this it would run into its neighbour's.
const LEAST_WIDTH = 54;
const MOST_WIDTH = 84;

/** Legs side by side, as wide as they are thick where that leaves each its label; unknown ones as thick as the others. */
export function legSlots(
  legs: readonly LegSize[],
  { left, right }: { readonly left: number; readonly right: number },
): readonly LegSlot[] {
  const room = right - left - GAP * (legs.length - 1);
  const known = legs.flatMap(({ thickness }) => thickness ?? []);
  const all = known.reduce<Length>((sum, one) => plus(sum, one), zero);
  const even = 1 / legs.length;
  const share = ({ thickness }: LegSize): number =>
    thickness && !isZero(all) ? (ratioOf(thickness, all) * known.length) / legs.length : even;
  const least = Math.min(LEAST_WIDTH, room / legs.length);
  const whole = legs.map((leg) => least + (room - legs.length * least) * share(leg));
  const shrink = Math.min(1, MOST_WIDTH / Math.max(...whole));
  const widths = whole.map((width) => Math.max(least, width * shrink));
  return widths.map((width, index) => {
    const from = left + widths.slice(0, index).reduce((sum, one) => sum + one + GAP, 0);
    const { thickness, insert, isBlind } = legs[index] ?? {
      thickness: undefined,
      insert: undefined,
      isBlind: false,
    };
    return {
      left: from,
      right: from + width,
      isKnown: thickness !== undefined,
      isBlind,
      filled: thickness && insert ? Math.min(1, ratioOf(insert.installedMost, thickness)) : undefined,
    };
  });
}

type LegsCutProps = { readonly slots: readonly LegSlot[]; readonly top: number; readonly bottom: number };

/** Each leg cut through its hole: metal above and below, its insert's coils in brass. */
export function LegsCut({ slots, top, bottom }: LegsCutProps) {
  const middle = (top + bottom) / 2;
  const half = Math.max(7, (bottom - top) * 0.2);
  const first = slots[0];
  const last = slots.at(-1);
  return (
    <>
      {slots.map((slot) => (
        <Leg key={slot.left} slot={slot} top={top} bottom={bottom} middle={middle} half={half} />
      ))}
      {first && last && <path class="drawing-centre" d={`M${first.left - 6} ${middle}H${last.right + 6}`} />}
    </>
  );
}

type LegProps = Omit<LegsCutProps, 'slots'> & {
  readonly slot: LegSlot;
  readonly middle: number;
  readonly half: number;
};

const SET_DOWN = 4;
const COIL = 5;
const FLOOR = 12;

function Leg({ slot, top, bottom, middle, half }: LegProps) {
  const { left, right, isKnown, isBlind, filled } = slot;
  const end = isBlind ? right - FLOOR : right;
  const metal = isBlind
    ? `M${left} ${top}H${right}V${bottom}H${left}V${middle + half}H${end}V${middle - half}H${left}z`
    : `M${left} ${top}H${right}V${middle - half}H${left}z M${left} ${middle + half}H${right}V${bottom}H${left}z`;
  return (
    <>
      <path class="drawing-solid" d={metal} {...(!isKnown && { 'stroke-dasharray': '6 5' })} />
      {filled !== undefined && (
        <path
          class="drawing-changes"
          fill="none"
          d={[-1, 1]
            .map((side) =>
              coils(
                left + SET_DOWN,
                Math.min(end, left + SET_DOWN + filled * (end - left - SET_DOWN)),
                middle + side * half,
                side,
              ),
            )
            .join(' ')}
        />
      )}
    </>
  );
}

/** A row of thread points along the wall of the hole. */
function coils(from: number, to: number, wall: number, side: number): string {
  const points = Array.from({ length: Math.floor((to - from) / COIL) }, (_, index) => {
    const x = from + index * COIL;
    return `L${x + COIL / 2} ${wall + side * COIL}L${x + COIL} ${wall}`;
  });
  return `M${from} ${wall}${points.join('')}`;
}
