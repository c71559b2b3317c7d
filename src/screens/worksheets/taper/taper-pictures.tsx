import { radians } from '../../../engine/length/angle.ts';

/** The room a picture has, and the half angle it is drawn with. */
export type Place = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly halfDegrees: number;
};

/** Lying, big end to the left; a bore stands in its block. */
export function Cone({ at, isBore }: { at: Place; isBore: boolean }) {
  const { left, right, top, bottom } = at;
  const slope = Math.tan(radians(at.halfDegrees));
  const y = (top + bottom) / 2;
  const room = (bottom - top) / 2 - (isBore ? 14 : 6);
  const long = Math.min(right - left - 24, (room * 0.8) / slope);
  const from = (left + right - long) / 2;
  const big = Math.min(room, long * slope + room * 0.55);
  const small = Math.max(1, big - long * slope);
  const outline = `M${from} ${y - big}L${from + long} ${y - small}V${y + small}L${from} ${y + big}z`;
  return (
    <>
      {isBore && (
        <rect class="drawing-solid" x={from} y={y - room - 12} width={long} height={2 * (room + 12)} />
      )}
      <path class={isBore ? 'drawing-part drawing-changes' : 'drawing-solid'} d={outline} />
      <path class="drawing-centre" d={`M${from - 10} ${y}H${from + long + 10}`} />
      <path
        class="drawing-changes"
        d={`M${from} ${y - big}L${from + long} ${y - small}M${from} ${y + big}L${from + long} ${y + small}`}
      />
    </>
  );
}

/** Standing on its small end: rollers on the plate, and up on blocks. */
export function Rollers({ at }: { at: Place }) {
  const { left, right, top, bottom, halfDegrees } = at;
  const half = radians(halfDegrees);
  const [slope, slant] = [Math.tan(half), 1 / Math.cos(half)];
  const x = (left + right) / 2;
  const tall = bottom - top;
  const radius = tall * 0.13;
  const up = tall * 0.46;
  const small = Math.max(8, (right - left) / 2 - 2 * radius - tall * slope - 18) * 0.6;
  const big = small + tall * slope;
  const middle = (raised: number) => small + (radius + raised) * slope + radius * slant;
  return (
    <>
      <path d={`M${left} ${bottom}H${right}`} />
      <path
        class="drawing-solid"
        d={`M${x - small} ${bottom}L${x - big} ${top}H${x + big}L${x + small} ${bottom}z`}
      />
      <path class="drawing-centre" d={`M${x} ${top - 6}V${bottom + 6}`} />
      {[-1, 1].map((side) => (
        <g key={side}>
          <circle class="drawing-part" cx={x + side * middle(0)} cy={bottom - radius} r={radius} />
          <rect
            class="drawing-hatch"
            x={x + side * middle(up) - radius}
            y={bottom - up}
            width={2 * radius}
            height={up}
            stroke-dasharray="4 4"
          />
          <circle
            class="drawing-part drawing-changes"
            cx={x + side * middle(up)}
            cy={bottom - radius - up}
            r={radius}
          />
        </g>
      ))}
    </>
  );
}

/** A bore cut through, mouth up, with both balls where they rest. */
export function Balls({ at }: { at: Place }) {
  const { left, right, top, bottom, halfDegrees } = at;
  const half = radians(halfDegrees);
  const slope = Math.tan(half);
  const x = (left + right) / 2;
  const face = top + 14;
  const deep = bottom - face;
  const mouth = Math.min((right - left) / 2 - 24, deep * slope * 0.8 + deep * 0.24);
  const end = Math.max(2, mouth - deep * slope);
  const ball = (down: number) => ({ y: face + down, r: (mouth - down * slope) * Math.cos(half) });
  const large = ball(deep * 0.16);
  const small = ball(deep * 0.8);
  const wall = Math.min((right - left) / 2, mouth + 30);
  const body = (side: 1 | -1) =>
    `M${x + side * wall} ${face}H${x + side * mouth}L${x + side * end} ${bottom}H${x + side * wall}z`;
  return (
    <>
      <path class="drawing-solid" d={`${body(-1)} ${body(1)}`} />
      <path class="drawing-centre" d={`M${x} ${top - 4}V${bottom + 6}`} />
      <circle class="drawing-part" cx={x} cy={small.y} r={small.r} />
      <circle class="drawing-part drawing-changes" cx={x} cy={large.y} r={large.r} />
    </>
  );
}
