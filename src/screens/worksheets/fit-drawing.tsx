import { mean } from '../../engine/reading/estimate.ts';
import type { MeasuredPart } from '../../engine/fit/fit-check.ts';
import type { FitLimits, Range } from '../../engine/fit/fits.ts';
import {
  decimalText,
  largest,
  lengthOf,
  minus,
  ratioOf,
  smallest,
  type Length,
} from '../../engine/length/length.ts';
import { limitFigure, sayClearance, sayLimits } from '../../engine/fit/say-fit.ts';
import { showSize } from '../../engine/reading/say-readings.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import '../common/drawing.css';

type FitDrawingProps = {
  readonly fit: FitLimits;
  readonly bore?: MeasuredPart | undefined;
  readonly pin?: MeasuredPart | undefined;
  readonly unit: ShownUnit;
};

const TOP = 66;
const HEIGHT = 130;
/** How far past the zones a measured size is still drawn where it is, as a share of their height. */
const OVER = 0.12;
const HOLE = { x: 96, width: 88 };
const PIN = { x: 214, width: 88 };

/** The tolerance zones of hole and pin about the nominal size, drawn far larger than they are; measured parts in brass. */
export function FitDrawing({ fit, bore, pin, unit }: FitDrawingProps) {
  const { hole, pin: pinLimits, nominal } = fit;
  const ends = [hole.lower, hole.upper, pinLimits.lower, pinLimits.upper];
  const low = smallest(nominal, ...ends);
  const span = minus(largest(nominal, ...ends), low);
  const share = (size: Length) => ratioOf(minus(size, low), span);
  const at = (size: Length) => TOP + HEIGHT * (1 - Math.min(1 + OVER, Math.max(-OVER, share(size))));
  const beyond = (size: Length) =>
    share(size) > 1 + OVER ? 'above' : share(size) < -OVER ? 'below' : undefined;
  const zeroAt = at(nominal);
  return (
    <svg class="drawing" viewBox="0 0 390 262" role="img" aria-label={spoken({ fit, bore, pin, unit })}>
      <path class="drawing-centre" d={`M8 ${zeroAt}h374`} />
      <Zone box={HOLE} limits={hole} nominal={nominal} at={at} unit={unit} side="start" />
      <Zone box={PIN} limits={pinLimits} nominal={nominal} at={at} unit={unit} side="end" />
      {bore && <Measured box={HOLE} part={bore} {...{ at, beyond, nominal, unit }} />}
      {pin && <Measured box={PIN} part={pin} {...{ at, beyond, nominal, unit }} />}
      <text x="8" y="24">{`nominal ${limitFigure(nominal, unit)}`}</text>
      <text class="drawing-note" x="382" y="24" text-anchor="end" style={{ fontWeight: 400 }}>
        {unit === 'in' ? 'in thousandths' : 'in micrometres'}
      </text>
      <text x={HOLE.x + HOLE.width / 2} y="252" text-anchor="middle">
        hole
      </text>
      <text x={PIN.x + PIN.width / 2} y="252" text-anchor="middle">
        pin
      </text>
    </svg>
  );
}

type ZoneProps = {
  readonly box: { readonly x: number; readonly width: number };
  readonly limits: Range;
  readonly nominal: Length;
  readonly at: (size: Length) => number;
  readonly unit: ShownUnit;
  readonly side: 'start' | 'end';
};

function Zone({ box, limits, nominal, at, unit, side }: ZoneProps) {
  const top = at(limits.upper);
  const bottom = at(limits.lower);
  const x = side === 'start' ? box.x - 8 : box.x + box.width + 8;
  const anchor = side === 'start' ? 'end' : 'start';
  // Two figures that would touch are moved apart; each keeps its own side of the zone's middle.
  const apart = Math.max(0, 22 - (bottom - top)) / 2;
  return (
    <>
      <rect class="drawing-solid" x={box.x} y={top} width={box.width} height={Math.max(2, bottom - top)} />
      <text x={x} y={top - apart + 6} text-anchor={anchor}>
        {deviationText(minus(limits.upper, nominal), unit)}
      </text>
      <text x={x} y={bottom + apart + 6} text-anchor={anchor}>
        {deviationText(minus(limits.lower, nominal), unit)}
      </text>
    </>
  );
}

type MeasuredProps = Pick<ZoneProps, 'box' | 'nominal' | 'at' | 'unit'> & {
  readonly part: MeasuredPart;
  readonly beyond: (size: Length) => 'above' | 'below' | undefined;
};

/** A line for the tightest place and one for the loosest; what lies off the picture is a broken line with its figure. */
function Measured({ box, part, nominal, at, beyond, unit }: MeasuredProps) {
  const sizes = [mean(part.tightest), mean(part.loosest)];
  const line = (size: Length) => `M${box.x - 4} ${at(size)}h${box.width + 8}`;
  const drawn = sizes.filter((size) => !beyond(size));
  const above = sizes.filter((size) => beyond(size) === 'above');
  const below = sizes.filter((size) => beyond(size) === 'below');
  return (
    <>
      {drawn.length > 0 && <path class="drawing-changes" d={drawn.map(line).join(' ')} />}
      {[above, below].map((off) => {
        const [first, ...others] = off;
        if (!first) return null;
        const farthest = off === above ? largest(first, ...others) : smallest(first, ...others);
        const y = at(farthest);
        return (
          <>
            <path class="drawing-changes" style={{ strokeDasharray: '12 8' }} d={line(farthest)} />
            <text
              class="drawing-changes-text"
              x={box.x + box.width / 2}
              y={off === above ? y - 8 : y + 20}
              text-anchor="middle"
            >
              {`${deviationText(minus(farthest, nominal), unit)} ${off === above ? '↑' : '↓'}`}
            </text>
          </>
        );
      })}
    </>
  );
}

/** A deviation as the tables print it: `+1.6`, `−.55`, `0` thousandths, `+21` micrometres. */
export function deviationText(deviation: Length, unit: ShownUnit): string {
  const size =
    unit === 'in' ? decimalText(deviation, 'thou', 2) : ratioOf(deviation, lengthOf('0.001 mm')).toFixed(1);
  const plain = size
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')
    .replace(/^(-?)0\./, '$1.');
  if (/^-?0?$/.test(plain)) return '0';
  return plain.startsWith('-') ? `−${plain.slice(1)}` : `+${plain}`;
}

function spoken({ fit, bore, pin, unit }: FitDrawingProps): string {
  const measured = [
    bore && `bore measured ${showSize(bore.tightest, unit)}`,
    pin && `pin measured ${showSize(pin.tightest, unit)}`,
  ].filter((part) => part !== undefined);
  return `${fit.fitClass} at ${show(fit.nominal, unit)}: hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}, ${sayClearance(fit, unit)}${measured.length > 0 ? `; ${measured.join(', ')}` : ''}.`;
}
