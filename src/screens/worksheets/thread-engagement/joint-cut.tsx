import type { Held } from '../../../engine/thread/grip-question.ts';
import type { Slot } from './joint-slots.ts';

export type JointCutProps = {
  readonly held: Held;
  /** From the left: of a stud the last leg first, as its part stands on the right. */
  readonly legs: readonly (Slot & { readonly isKnown: boolean })[];
  /** What holds on the right: the nut, or the thread in the part. */
  readonly hold: Slot;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Where the plain shank ends, where the bolt ends. */
  readonly shankEnd: number | undefined;
  readonly boltEnd: number | undefined;
  readonly isBlind: boolean;
  readonly hasPlanes: boolean;
};

export const HEAD = 16;
const FLOOR = 12;

/** The bolt along its axis in what it holds: legs, shear planes, plain shank, and the engaged thread in brass. */
export function JointCut(props: JointCutProps) {
  const { held, legs, hold, left, right, top, bottom, shankEnd, boltEnd, isBlind, hasPlanes } = props;
  const axis = (top + bottom) / 2;
  const half = Math.max(6, (bottom - top) * 0.17);
  const face = hold.left;
  const end = boltEnd ?? hold.right + (held === 'nut' ? 7 : 0);
  const threadFrom = held === 'stud' ? left : (shankEnd ?? face);
  const threadTo = held === 'stud' ? (shankEnd ?? face) : Math.min(face, end);
  const block = { top, bottom, axis, half };
  return (
    <>
      {legs.map((leg) => (
        <Block key={leg.left} {...block} from={leg.left} to={leg.right} isKnown={leg.isKnown} />
      ))}
      {held === 'nut' ? (
        <rect
          class="drawing-solid"
          x={face}
          y={axis - half * 2}
          width={hold.right - face}
          height={half * 4}
        />
      ) : (
        <Block {...block} from={face} to={right} isKnown floor={isBlind ? right - FLOOR : right} />
      )}
      <rect class="drawing-solid" x={left - HEAD} y={axis - half * 2} width={HEAD} height={half * 4} />
      <path d={`M${left} ${axis - half}H${end - 4}l4 4V${axis + half - 4}l-4 4H${left}`} />
      <Threads from={threadFrom} to={threadTo} axis={axis} half={half} />
      <g class="drawing-changes">
        <rect x={face} y={axis - half} width={Math.max(0, hold.right - face)} height={2 * half} />
        <Threads from={face} to={hold.right} axis={axis} half={half} />
      </g>
      {hasPlanes &&
        legs
          .slice(1)
          .map(({ left: x }) => x)
          .concat(held === 'nut' ? [] : [face])
          .map((x) => <path key={x} class="drawing-centre" d={`M${x} ${top - 4}V${bottom + 4}`} />)}
      <path class="drawing-centre" d={`M${left - HEAD - 4} ${axis}H${right}`} />
    </>
  );
}

type BlockProps = {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
  readonly axis: number;
  readonly half: number;
  readonly isKnown: boolean;
  /** Where a blind hole ends in it. */
  readonly floor?: number;
};

/** A part cut through its hole; dashed while it isn't measured. */
function Block({ from, to, top, bottom, axis, half, isKnown, floor = to }: BlockProps) {
  const hole = half + 3;
  const metal =
    floor < to
      ? `M${from} ${top}H${to}V${bottom}H${from}V${axis + hole}H${floor}V${axis - hole}H${from}z`
      : `M${from} ${top}H${to}V${axis - hole}H${from}z M${from} ${axis + hole}H${to}V${bottom}H${from}z`;
  return <path class="drawing-solid" d={metal} {...(!isKnown && { 'stroke-dasharray': '6 5' })} />;
}

/** Flanks of a thread, drawn coarser than they are. */
function Threads({ from, to, axis, half }: { from: number; to: number; axis: number; half: number }) {
  const count = Math.max(0, Math.floor((to - from) / 8));
  const lines = Array.from(
    { length: count },
    (_, index) => `M${from + 4 + index * 8} ${axis - half}l3 ${2 * half}`,
  );
  return <path class="drawing-hatch" d={lines.join('')} />;
}
