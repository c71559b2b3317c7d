import { marked } from '../../../engine/length/decimal-text.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import type { MeasuredPart } from '../../../engine/fit/fit-check.ts';
import type { FitLimits, Range } from '../../../engine/fit/fits.ts';
import {
  absolute,
  decimalText,
  isNegative,
  largest,
  lengthOf,
  minus,
  ratioOf,
  smallest,
  type Length,
} from '../../../engine/length/length.ts';
import { limitFigure, sayClearance, sayLimits } from '../../../engine/fit/say-fit.ts';
import { showSize, sizeFigure } from '../../../engine/reading/say-readings.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { FitAnswer } from '../../../engine/worksheets/fit/fit.ts';
import type { FitQuestion } from '../../../engine/worksheets/fit/question.ts';
import { fitWorksheet } from '../../../engine/worksheets/fit/worksheet.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';

/** How far past the zones, in pixels, a measured size is still drawn where it is: a figure stands beyond it. */
const OVER = 6;
// The room of a deviation's figure beside its zone, and half the gap between the zones.
const FIGURE_ROOM = 44;
const HALF_GAP = 8;

/** The tolerance zones of hole and pin about the nominal size, drawn far larger than they are; measured parts in brass. */
export function drawFit(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = fitWorksheet.work(given);
  const question = 'question' in worked ? worked.question : undefined;
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const bore = given.size('bore');
  const pin = given.size('pin');
  const nominal = question?.nominal ?? given.exact('nominal');
  const foot = box.height - 12;
  return {
    shapes: (
      <>
        {answer ? (
          <Zones fit={answer.fit} bore={bore} pin={pin} unit={unit} box={box} />
        ) : (
          <UsualZones box={box} />
        )}
        {answer && (
          <text class="form-drawing-note" x={12} y={box.height - 46}>
            {unit === 'in' ? 'thou' : 'µm'}
          </text>
        )}
      </>
    ),
    sizes: [
      {
        field: 'bore',
        name: 'bore',
        figure: bore && sizeFigure(bore.tightest, unit),
        x: 12,
        y: 26,
        anchor: 'start',
      },
      {
        field: 'pin',
        name: 'pin',
        figure: pin && sizeFigure(pin.tightest, unit),
        x: box.width - 12,
        y: 26,
        anchor: 'end',
      },
      {
        field: 'nominal',
        name: 'nominal',
        figure: nominal && limitFigure(nominal, unit),
        x: 12,
        y: foot,
        anchor: 'start',
        beside: true,
      },
    ],
    running: answer && { text: runningText(answer, unit), x: box.width - 12, y: foot },
    words: question && answer ? spoken(question, answer, unit) : 'Hole and pin with the limits of a class.',
  };
}

/** `RC5`; with both parts there what is left between them: `RC5 · .0117 free`. */
function runningText({ fit, clearance }: FitAnswer, unit: ShownUnit): string {
  if (!clearance) return fit.fitClass;
  const { value } = clearance;
  return `${fit.fitClass} · ${figure(absolute(value), unit)} ${isNegative(value) ? 'grip' : 'free'}`;
}

type Bar = { readonly x: number; readonly width: number; readonly side: 'start' | 'end' };
type Band = { readonly top: number; readonly height: number };

function placed({ width, height }: DrawingBox): {
  readonly band: Band;
  readonly hole: Bar;
  readonly pin: Bar;
} {
  const bar = Math.min(88, width * 0.095);
  return {
    band: { top: 30, height: height - 30 - 56 },
    hole: { x: width / 2 - HALF_GAP - bar, width: bar, side: 'start' },
    pin: { x: width / 2 + HALF_GAP, width: bar, side: 'end' },
  };
}

type ZonesProps = {
  readonly fit: FitLimits;
  readonly bore: MeasuredPart | undefined;
  readonly pin: MeasuredPart | undefined;
  readonly unit: ShownUnit;
  readonly box: DrawingBox;
};

function Zones({ fit, bore, pin, unit, box }: ZonesProps) {
  const at = placed(box);
  const { hole, pin: pinLimits, nominal } = fit;
  const ends = [hole.lower, hole.upper, pinLimits.lower, pinLimits.upper];
  const low = smallest(nominal, ...ends);
  const span = minus(largest(nominal, ...ends), low);
  const share = (size: Length) => ratioOf(minus(size, low), span);
  const over = OVER / at.band.height;
  const y = (size: Length) =>
    at.band.top + at.band.height * (1 - Math.min(1 + over, Math.max(-over, share(size))));
  const beyond = (size: Length) =>
    share(size) > 1 + over ? 'above' : share(size) < -over ? 'below' : undefined;
  const reach = FIGURE_ROOM;
  return (
    <>
      <path
        class="drawing-centre"
        d={`M${at.hole.x - reach} ${y(nominal)}H${at.pin.x + at.pin.width + reach}`}
      />
      <Zone bar={at.hole} limits={hole} nominal={nominal} y={y} unit={unit} />
      <Zone bar={at.pin} limits={pinLimits} nominal={nominal} y={y} unit={unit} />
      {bore && <Measured bar={at.hole} part={bore} {...{ y, beyond, nominal, unit }} />}
      {pin && <Measured bar={at.pin} part={pin} {...{ y, beyond, nominal, unit }} />}
    </>
  );
}

/** Before anything is given: a hole that begins at the nominal and a pin below it, as most running fits are. */
function UsualZones({ box }: { box: DrawingBox }) {
  const { band, hole, pin } = placed(box);
  const zero = band.top + band.height * 0.45;
  return (
    <>
      <path
        class="drawing-centre"
        d={`M${hole.x - FIGURE_ROOM} ${zero}H${pin.x + pin.width + FIGURE_ROOM}`}
      />
      <rect class="drawing-solid" x={hole.x} y={band.top} width={hole.width} height={zero - band.top} />
      <rect
        class="drawing-solid"
        x={pin.x}
        y={zero + band.height * 0.2}
        width={pin.width}
        height={band.height * 0.35}
      />
    </>
  );
}

type ZoneProps = {
  readonly bar: Bar;
  readonly limits: Range;
  readonly nominal: Length;
  readonly y: (size: Length) => number;
  readonly unit: ShownUnit;
};

function Zone({ bar, limits, nominal, y, unit }: ZoneProps) {
  const top = y(limits.upper);
  const bottom = y(limits.lower);
  const x = bar.side === 'start' ? bar.x - 8 : bar.x + bar.width + 8;
  const anchor = bar.side === 'start' ? 'end' : 'start';
  // Two figures that would touch are moved apart; each keeps its own side of the zone's middle.
  const apart = Math.max(0, 19 - (bottom - top)) / 2;
  return (
    <>
      <rect class="drawing-solid" x={bar.x} y={top} width={bar.width} height={Math.max(2, bottom - top)} />
      <text x={x} y={top - apart + 6} text-anchor={anchor}>
        {deviationText(minus(limits.upper, nominal), unit)}
      </text>
      <text x={x} y={bottom + apart + 6} text-anchor={anchor}>
        {deviationText(minus(limits.lower, nominal), unit)}
      </text>
    </>
  );
}

type MeasuredProps = Pick<ZoneProps, 'bar' | 'nominal' | 'y' | 'unit'> & {
  readonly part: MeasuredPart;
  readonly beyond: (size: Length) => 'above' | 'below' | undefined;
};

/** A line for the tightest place and one for the loosest; what lies off the picture is a broken line with its figure. */
function Measured({ bar, part, nominal, y, beyond, unit }: MeasuredProps) {
  const sizes = [mean(part.tightest), mean(part.loosest)];
  const line = (size: Length) => `M${bar.x - 4} ${y(size)}h${bar.width + 8}`;
  const drawn = sizes.filter((size) => !beyond(size));
  const outside = (['above', 'below'] as const).flatMap((way) => {
    const [first, ...others] = sizes.filter((size) => beyond(size) === way);
    if (!first) return [];
    return [{ way, farthest: way === 'above' ? largest(first, ...others) : smallest(first, ...others) }];
  });
  return (
    <>
      {drawn.length > 0 && <path class="drawing-changes" d={drawn.map(line).join(' ')} />}
      {outside.map(({ way, farthest }) => (
        <g key={way}>
          <path class="drawing-changes" style={{ strokeDasharray: '12 8' }} d={line(farthest)} />
          <text
            class="drawing-changes-text"
            x={bar.side === 'start' ? bar.x + bar.width : bar.x}
            y={way === 'above' ? y(farthest) - 5 : y(farthest) + 17}
            text-anchor={bar.side === 'start' ? 'end' : 'start'}
          >
            {`${deviationText(minus(farthest, nominal), unit)} ${way === 'above' ? '↑' : '↓'}`}
          </text>
        </g>
      ))}
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
  return marked(plain.startsWith('-') ? `−${plain.slice(1)}` : `+${plain}`);
}

function spoken({ bore, pin }: FitQuestion, { fit }: FitAnswer, unit: ShownUnit): string {
  const measured = [
    bore && `bore measured ${showSize(bore.tightest, unit)}`,
    pin && `pin measured ${showSize(pin.tightest, unit)}`,
  ].filter((part) => part !== undefined);
  return `${fit.fitClass} at ${show(fit.nominal, unit)}: hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}, ${sayClearance(fit, unit)}${measured.length > 0 ? `; ${measured.join(', ')}` : ''}.`;
}
