import { isZero, largest, minus, plus, ratioOf, smallest, type Length } from '../../engine/length/length.ts';
import { showAgainst, type ShownAgainst } from '../../engine/length/show-limits.ts';
import { showBand, type ShownUnit } from '../../engine/length/show.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import type { VerdictKind } from './verdict-band.tsx';
import './number-line.css';

type NumberLineProps = {
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
  readonly verdict: VerdictKind;
  readonly unit: ShownUnit;
  readonly label: string;
};

const LEFT = 34;
const WIDTH = 292;
/** Half of a letter's width: how far from the edge a word's middle has to stay. */
const LETTER = 6;

/** The picture of every verdict: the limits, the value, and the band the readings leave around it. */
export function NumberLine({ value, halfWidth, limits, verdict, unit, label }: NumberLineProps) {
  const low = minus(value, halfWidth);
  const high = plus(value, halfWidth);
  const ends = [limits.lower, limits.upper].filter((end) => end !== undefined);
  const from = smallest(low, ...ends);
  const span = minus(largest(high, ...ends), from);
  // Known exactly and at its only limit, there is nothing to spread out: it stands in the middle.
  const at = (length: Length) => LEFT + WIDTH * (isZero(span) ? 0.5 : ratioOf(minus(length, from), span));
  const lower = limits.lower === undefined ? LEFT - 30 : at(limits.lower);
  const upper = limits.upper === undefined ? LEFT + WIDTH + 30 : at(limits.upper);
  const x = at(value);
  const shown = showAgainst([value], limits, unit);
  const now = `${label} ${shown.values[0] ?? ''}`;
  return (
    <svg
      class={`number-line number-line-${verdict}`}
      viewBox="0 0 360 104"
      role="img"
      aria-label={spoken(shown, { halfWidth, unit, label })}
    >
      <line class="number-line-axis" x1="6" x2="354" y1="56" y2="56" />
      <rect class="number-line-wanted" x={lower} y="42" width={Math.max(2, upper - lower)} height="28" />
      {limits.lower !== undefined && <line class="number-line-limit" x1={lower} x2={lower} y1="36" y2="76" />}
      {limits.upper !== undefined && <line class="number-line-limit" x1={upper} x2={upper} y1="36" y2="76" />}
      <rect class="number-line-band" x={at(low)} y="50" width={Math.max(3, at(high) - at(low))} height="12" />
      <line class="number-line-value" x1={x} x2={x} y1="32" y2="80" />
      <text class="number-line-now" x={inside(x, roomFor(now))} y="22" text-anchor="middle">
        {now}
      </text>
      {limitTexts(shown, { lower, upper }).map((mark) => (
        <text key={mark.text} class="number-line-mark" x={mark.x} y="98" text-anchor="middle">
          {mark.text}
        </text>
      ))}
    </svg>
  );
}

function roomFor(text: string): number {
  return Math.max(30, text.length * LETTER + 2);
}

function inside(x: number, margin: number): number {
  return Math.min(360 - margin, Math.max(margin, x));
}

// Two limits too near to stand under their own lines are written once, as "from to".
function limitTexts(
  { lower, upper }: ShownAgainst,
  at: { lower: number; upper: number },
): { x: number; text: string }[] {
  if (lower !== undefined && upper !== undefined && at.upper - at.lower < 66) {
    const text = `${lower} to ${upper}`;
    return [{ x: inside((at.lower + at.upper) / 2, roomFor(text)), text }];
  }
  return [
    ...(lower === undefined ? [] : [{ x: inside(at.lower, roomFor(lower)), text: lower }]),
    ...(upper === undefined ? [] : [{ x: inside(at.upper, roomFor(upper)), text: upper }]),
  ];
}

function spoken(
  { values, lower, upper }: ShownAgainst,
  { halfWidth, unit, label }: Pick<NumberLineProps, 'halfWidth' | 'unit' | 'label'>,
): string {
  const from = lower === undefined ? '' : ` from ${lower}`;
  const to = upper === undefined ? '' : ` to ${upper}`;
  return `${label} ${values[0] ?? ''} ${unit}, band ${showBand(halfWidth, unit)}; wanted${from}${to}.`;
}
