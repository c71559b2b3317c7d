/** The room a plan has. */
export type Place = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

type PlanProps = { readonly at: Place; readonly turn: number };

/** Machine above, sidecar wheel below, running to the right: toe-in turns the sidecar wheel toward the machine. */
export function Outfit({ at: { left, right, top, bottom }, turn }: PlanProps) {
  const width = right - left;
  const tall = bottom - top;
  const machine = top + tall * 0.2;
  const side = top + tall * 0.8;
  const [rear, front] = [left + width * 0.26, right - width * 0.2];
  const sidecar = left + width * 0.4;
  const wheel = { long: width * 0.2, high: tall * 0.1 };
  return (
    <>
      <Wheel x={rear} y={machine} {...wheel} />
      <Wheel x={front} y={machine} {...wheel} />
      <path d={`M${rear} ${machine}H${front}`} />
      <path
        class="drawing-hatch"
        stroke-dasharray="3 5"
        d={`M${rear} ${machine}L${sidecar} ${side}L${front - width * 0.16} ${machine}`}
      />
      <path class="drawing-centre" d={`M${left} ${machine + wheel.high}H${right}`} />
      <g transform={`rotate(${-turn} ${sidecar} ${side})`}>
        <Wheel x={sidecar} y={side} {...wheel} />
        <path class="drawing-changes" d={`M${left + 6} ${side - wheel.high}H${right - 6}`} />
      </g>
      <Arrow x={left + width * 0.08} from={machine + wheel.high} to={side - wheel.high} />
      <Arrow x={right - width * 0.08} from={machine + wheel.high} to={side - wheel.high} />
    </>
  );
}

function Wheel({
  x,
  y,
  long,
  high,
}: {
  readonly x: number;
  readonly y: number;
  readonly long: number;
  readonly high: number;
}) {
  return (
    <rect class="drawing-solid" x={x - long / 2} y={y - high / 2} width={long} height={high} rx={high / 2} />
  );
}

/** A distance between both straight edges; its ends stay clear of them. */
function Arrow({ x, from, to }: { readonly x: number; readonly from: number; readonly to: number }) {
  const [top, foot] = [from + 8, to - 8];
  return (
    <path
      class="drawing-hatch"
      d={`M${x} ${top}V${foot}M${x - 4} ${top + 6}L${x} ${top}L${x + 4} ${top + 6}M${x - 4} ${foot - 6}L${x} ${foot}L${x + 4} ${foot - 6}`}
    />
  );
}

/** Coupling to the right, the axle across with its wheels; its left end, above, stands back where it is turned so. */
export function Trailer({ at: { left, right, top, bottom }, turn }: PlanProps) {
  const tall = bottom - top;
  const y = (top + bottom) / 2;
  const axle = left + (right - left) * 0.22;
  const half = tall * 0.36;
  const coupling = right - 12;
  // Above is left, running to the right: back is to the left.
  const lean = Math.tan((turn * Math.PI) / 180) * half;
  const ends = [
    [axle - lean, y - half],
    [axle + lean, y + half],
  ] as const;
  const wheel = { long: tall * 0.28, high: tall * 0.11 };
  return (
    <>
      <path class="drawing-centre" d={`M${left} ${y}H${right}`} />
      <path
        d={`M${axle - 10} ${y - half * 0.62}H${axle + (coupling - axle) * 0.5}L${coupling} ${y}L${axle + (coupling - axle) * 0.5} ${y + half * 0.62}H${axle - 10}z`}
      />
      {ends.map(([x, end]) => (
        <g key={end} transform={`rotate(${-turn} ${x} ${end})`}>
          <Wheel x={x} y={end} {...wheel} />
        </g>
      ))}
      <path class="drawing-changes" d={`M${ends[0][0]} ${ends[0][1]}L${ends[1][0]} ${ends[1][1]}`} />
      {ends.map(([x, end]) => (
        <path key={end} class="drawing-hatch" stroke-dasharray="5 4" d={`M${coupling} ${y}L${x} ${end}`} />
      ))}
      <circle class="drawing-part drawing-changes" cx={coupling} cy={y} r="5" />
    </>
  );
}
