import type { ComponentChildren } from 'preact';
import { isNegative, isZero, type Length } from '../../engine/length/length.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { figure } from '../../engine/length/show.ts';
import '../common/drawing.css';

const AXIS = 112;
const LEFT = 66;
const RIGHT = 324;
const WIDE = 40;

/** Two ball bearings on their sleeve, cut along the axis; not to scale, and what is too long or short drawn larger. */
export function SleeveDrawing({
  between,
  sleeve,
  excess,
  unit,
}: {
  readonly between: Length;
  readonly sleeve: Length;
  /** Of the sleeve there is: what it is longer; left out where it is still to be made. */
  readonly excess?: Length;
  readonly unit: ShownUnit;
}) {
  const shift = !excess || isZero(excess) ? 0 : isNegative(excess) ? -12 : 12;
  const end = RIGHT + shift;
  const said = excess ? `, ${excessWords(excess, unit)}` : '';
  return (
    <Section
      label={`Two ball bearings on a sleeve. Distance between their faces ${figure(between, unit)} ${unit}, sleeve ${figure(sleeve, unit)} ${unit}${said}. Not to scale.`}
    >
      <path class="drawing-solid" d={`M${LEFT} 24H${RIGHT}V46H${LEFT}z M${LEFT} 200H${RIGHT}V178H${LEFT}z`} />
      <Ball x={LEFT - WIDE} />
      <Ball x={RIGHT} innerShift={Math.max(0, shift)} />
      {[90, 122].map((y) => (
        <rect key={y} class="drawing-part drawing-changes" x={LEFT} y={y} width={end - LEFT} height="12" />
      ))}
      <text x="195" y="70" text-anchor="middle">{`distance ${figure(between, unit)}`}</text>
      <text class="drawing-changes-text" x="195" y="164" text-anchor="middle">
        {`sleeve ${figure(sleeve, unit)}${said}`}
      </text>
      {shift !== 0 && (
        <text x="384" y="220" text-anchor="end">
          drawn larger
        </text>
      )}
    </Section>
  );
}

/** A bearing in its recess, cut along the axis: how far it stands proud or lies below, drawn larger. */
export function SeatDrawing({ proud, unit }: { readonly proud: Length; readonly unit: ShownUnit }) {
  const face = 84;
  const top = isZero(proud) ? face : isNegative(proud) ? face + 14 : face - 14;
  const words = isZero(proud)
    ? 'level with the face'
    : `${figure(proud, unit).replace('−', '')} ${isNegative(proud) ? 'below the face' : 'proud'}`;
  return (
    <Section label={`A bearing in its recess: ${words}. Not to scale.`} axis={false}>
      <path class="drawing-solid" d={`M40 ${face}H100V168H160V200H40z M350 ${face}H290V168H230V200H350z`} />
      <rect class="drawing-solid" x="102" y={top} width="58" height={168 - top} />
      <rect class="drawing-solid" x="230" y={top} width="58" height={168 - top} />
      <circle cx="131" cy={(top + 168) / 2} r="17" />
      <circle cx="259" cy={(top + 168) / 2} r="17" />
      <path class="drawing-centre" d="M195 44V214" />
      <path class="drawing-changes" d={`M20 ${face}H374 M102 ${top}H288`} />
      <text class="drawing-changes-text" x="195" y="34" text-anchor="middle">
        {isZero(proud) ? words : `${words}, drawn larger`}
      </text>
    </Section>
  );
}

/** Two taper rollers, cut along the axis, and what sets them in brass. */
export function TaperDrawing({
  said,
  setBy,
}: {
  readonly said: string;
  readonly setBy: 'nut' | 'shim-between' | 'shim-behind';
}) {
  const sets = {
    nut: `M346 ${AXIS - 34}h26v68h-26z`,
    'shim-between': `M186 ${AXIS - 26}h18v52h-18z`,
    'shim-behind': 'M300 34h10v40h-10z M300 190h10v-40h-10z',
  }[setBy];
  const words = { nut: 'the nut', 'shim-between': 'the shim between', 'shim-behind': 'the shim behind' }[
    setBy
  ];
  return (
    <Section label={`Two taper roller bearings: ${said}. Set by ${words}. Not to scale.`}>
      <path class="drawing-solid" d={`M10 ${AXIS - 16}H346v32H10z`} />
      {[1, -1].map((way) => (
        <g key={way} transform={`translate(0 ${AXIS}) scale(1 ${way}) translate(0 ${-AXIS})`}>
          <path d="M60 34l58 0 0 14-58 12z M332 34l-32 0-26 0 0 14 58 12z" />
          <path d="M60 96l0-18 58-14 0 32z M332 96l0-18-58-14 0 32z" />
          <path class="drawing-solid" d="M64 62l50-11 2 11-50 12z M328 62l-50-11-2 11 50 12z" />
        </g>
      ))}
      <path class="drawing-part drawing-changes" d={sets} />
      <text class="drawing-changes-text" x="195" y="216" text-anchor="middle">
        {said}
      </text>
    </Section>
  );
}

function Section({
  label,
  axis = true,
  children,
}: {
  label: string;
  axis?: boolean;
  children: ComponentChildren;
}) {
  return (
    <svg class="drawing" viewBox="0 0 390 226" role="img" aria-label={label}>
      {axis && <path class="drawing-centre" d={`M2 ${AXIS}H388`} />}
      {children}
    </svg>
  );
}

function Ball({ x, innerShift = 0 }: { x: number; innerShift?: number }) {
  return (
    <>
      {[24, 180].map((y) => (
        <rect key={y} class="drawing-solid" x={x} y={y} width={WIDE} height="20" />
      ))}
      {[84, 122].map((y) => (
        <rect key={y} class="drawing-solid" x={x + innerShift} y={y} width={WIDE} height="18" />
      ))}
      <circle cx={x + WIDE / 2} cy="64" r="17" />
      <circle cx={x + WIDE / 2} cy="160" r="17" />
    </>
  );
}

function excessWords(excess: Length, unit: ShownUnit): string {
  if (isZero(excess)) return 'just as long';
  return `${figure(excess, unit).replace('−', '')} ${isNegative(excess) ? 'short' : 'long'}`;
}
