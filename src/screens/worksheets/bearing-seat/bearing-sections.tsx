import type { DrawingBox } from '../frame/drawn.ts';

/** The room for a section, right of the sizes: its edges, its axis, and half its height. */
export type SectionAt = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** Under what stands top right, above the running figure. */
export function sectionIn({ width, height }: DrawingBox): SectionAt {
  return { left: width * 0.54, right: width - 14, top: 34, bottom: height - 30 };
}

type Side = 1 | -1 | 0;

// Of the section's height, for the bearing; the rest is the housing round it.
const HOUSING_LEAVES = 0.8;
// What is too long or too short is drawn so much larger that it is seen at all.
const DRAWN_LARGER = 7;

/** Two ball bearings with the sleeve between their inner races; the sleeve in brass. */
export function SleeveSection({ at, side }: { readonly at: SectionAt; readonly side: Side }) {
  const { left, right, top, bottom } = at;
  const axis = (top + bottom) / 2;
  const half = (bottom - top) / 2;
  const wide = Math.min(34, (right - left) * 0.2);
  const inner = right - wide - DRAWN_LARGER + side * DRAWN_LARGER;
  const outer = right - wide - DRAWN_LARGER;
  return (
    <>
      <path class="drawing-centre" d={`M${left - 8} ${axis}H${right + 8}`} />
      {[1, -1].map((way) => {
        const from = (share: number) => axis - way * half * share;
        return (
          <g key={way}>
            <Rect x={left + wide} y={[from(1), from(0.82)]} width={outer - left - wide} solid />
            <Race x={left} wide={wide} from={from} />
            <Rect x={outer} y={[from(1), from(0.82)]} width={wide} solid />
            <Rect x={Math.max(outer, inner)} y={[from(0.4), from(0.2)]} width={wide} solid />
            <circle cx={outer + wide / 2} cy={from(0.61)} r={half * 0.16} />
            <Rect x={left + wide} y={[from(0.36), from(0.22)]} width={inner - left - wide} changes />
          </g>
        );
      })}
    </>
  );
}

type SeatProps = {
  readonly at: SectionAt;
  readonly side: Side;
  /** Whether it is known how it stands; before that it is drawn level. */
  readonly isKnown: boolean;
  /** Shims or a seal behind it. */
  readonly hasMore: boolean;
};

/** A bearing home in its recess: how it stands to the face in brass. */
export function SeatSection({ at: { left, right, top, bottom }, side, isKnown, hasMore }: SeatProps) {
  const x = (left + right) / 2;
  const half = Math.min(80, (right - left) / 2 - 14);
  const face = top + DRAWN_LARGER + 4;
  const floor = bottom - (bottom - top) * 0.2;
  const level = face - side * DRAWN_LARGER;
  const behind = hasMore ? 6 : 0;
  const ring = half * 0.42;
  const deep = floor - behind - level;
  const body = (way: 1 | -1) =>
    `M${x + way * (half + 14)} ${face}H${x + way * half}V${floor}H${x + way * (half - ring)}V${bottom}H${x + way * (half + 14)}z`;
  return (
    <>
      <path class="drawing-solid" d={`${body(-1)} ${body(1)}`} />
      {([1, -1] as const).map((way) => {
        const edge = way === 1 ? x + half - ring : x - half;
        return (
          <g key={way}>
            <rect class="drawing-solid" x={edge} y={level} width={ring} height={deep} />
            <circle cx={edge + ring / 2} cy={level + deep / 2} r={Math.min(ring, deep) * 0.3} />
            {hasMore && (
              <rect class="drawing-part" x={edge} y={floor - behind} width={ring} height={behind} />
            )}
          </g>
        );
      })}
      <path class="drawing-centre" d={`M${x} ${top}V${bottom + 4}`} />
      {isKnown && (
        <path
          class="drawing-changes"
          d={`M${x - half - 22} ${face}H${x + half + 22} M${x - half} ${level}H${x + half}`}
        />
      )}
    </>
  );
}

type RingProps = { readonly at: SectionAt; readonly ring: 'inner' | 'outer' | undefined };

/** A bearing on its shaft and in its housing: the seat that is asked about in brass. */
export function RingSection({ at: { left, right, top, bottom }, ring }: RingProps) {
  const axis = (top + bottom) / 2;
  const half = ((bottom - top) / 2) * HOUSING_LEAVES;
  const wide = Math.min(44, (right - left) * 0.34);
  const x = (left + right - wide) / 2;
  return (
    <>
      <path class="drawing-centre" d={`M${left - 8} ${axis}H${right + 8}`} />
      {[1, -1].map((way) => {
        const from = (share: number) => axis - way * half * share;
        return (
          <g key={way}>
            <Race x={x} wide={wide} from={from} />
            <Rect
              x={x - 12}
              y={[from(1 / HOUSING_LEAVES), from(1)]}
              width={wide + 24}
              {...(ring === 'outer' ? { changes: true } : { solid: true })}
            />
          </g>
        );
      })}
      <Rect
        x={left}
        y={[axis - half * 0.2, axis + half * 0.2]}
        width={right - left}
        {...(ring === 'inner' ? { changes: true } : { solid: true })}
      />
    </>
  );
}

type TaperProps = {
  readonly at: SectionAt;
  readonly setBy: 'nut' | 'shim-between' | 'shim-behind' | undefined;
};

/** Two taper rollers on their spindle, and what sets them in brass. */
export function TaperSection({ at: { left, right, top, bottom }, setBy }: TaperProps) {
  const axis = (top + bottom) / 2;
  const half = (bottom - top) / 2;
  const across = right - left;
  const along = (share: number) => left + across * share;
  const changes = `drawing-part${setBy === undefined ? '' : ' drawing-changes'}`;
  return (
    <>
      <path class="drawing-centre" d={`M${left - 8} ${axis}H${right + 8}`} />
      <path
        class="drawing-solid"
        d={`M${left} ${axis - half * 0.16}H${right}V${axis + half * 0.16}H${left}z`}
      />
      {[1, -1].map((way) => {
        const from = (share: number) => axis - way * half * share;
        return (
          <g key={way}>
            <path
              d={`M${along(0.06)} ${from(0.98)}H${along(0.28)}V${from(0.84)}L${along(0.06)} ${from(0.7)}z M${along(0.88)} ${from(0.98)}H${along(0.66)}V${from(0.84)}L${along(0.88)} ${from(0.7)}z`}
            />
            <path
              class="drawing-solid"
              d={`M${along(0.09)} ${from(0.66)}L${along(0.26)} ${from(0.8)}V${from(0.58)}L${along(0.1)} ${from(0.44)}z M${along(0.85)} ${from(0.66)}L${along(0.68)} ${from(0.8)}V${from(0.58)}L${along(0.84)} ${from(0.44)}z`}
            />
            <path
              d={`M${along(0.06)} ${from(0.2)}V${from(0.38)}L${along(0.28)} ${from(0.54)}V${from(0.2)}z M${along(0.88)} ${from(0.2)}V${from(0.38)}L${along(0.66)} ${from(0.54)}V${from(0.2)}z`}
            />
            {setBy === 'shim-between' && (
              <Rect x={along(0.43)} y={[from(0.4), from(0.18)]} width={across * 0.08} changes />
            )}
            {setBy === 'shim-behind' && (
              <Rect x={along(0.61)} y={[from(0.98), from(0.72)]} width={across * 0.045} changes />
            )}
          </g>
        );
      })}
      {(setBy === 'nut' || setBy === undefined) && (
        <path
          class={changes}
          d={`M${along(0.9)} ${axis - half * 0.4}H${right}v${half * 0.8}H${along(0.9)}z`}
        />
      )}
    </>
  );
}

function Race({ x, wide, from }: { x: number; wide: number; from: (share: number) => number }) {
  return (
    <>
      <Rect x={x} y={[from(1), from(0.82)]} width={wide} solid />
      <Rect x={x} y={[from(0.4), from(0.2)]} width={wide} solid />
      <circle cx={x + wide / 2} cy={from(0.61)} r={Math.abs(from(0.61) - from(0.77))} />
    </>
  );
}

type RectProps = {
  readonly x: number;
  readonly y: readonly [number, number];
  readonly width: number;
  readonly solid?: boolean;
  readonly changes?: boolean;
};

/** Between two heights, whichever is the higher. */
function Rect({ x, y: [a, b], width, solid = false, changes = false }: RectProps) {
  return (
    <rect
      class={changes ? 'drawing-part drawing-changes' : solid ? 'drawing-solid' : undefined}
      x={x}
      y={Math.min(a, b)}
      width={width}
      height={Math.abs(a - b)}
    />
  );
}
