export type KeyPress = {
  /** As the browser names it: '5', '.', 'Enter', 'Shift'. */
  readonly key: string;
  readonly atMs: number;
  /** Held down and sent again by the keyboard. */
  readonly repeat?: boolean;
};

export type Burst = {
  /** Who typed it, told by the speed of the keys alone. A wrong guess costs a label, never a key. */
  readonly by: 'gauge' | 'person';
  /** Every character that was typed, in order. */
  readonly text: string;
  readonly ended?: 'Enter' | 'Tab';
  /**
   * The last keys are a gauge's, with a pause somewhere before them: the longest text from a pause on, or from the first
   * key, that is one number. A gauge behind something half typed, or one that faltered: then it is the whole text.
   */
  readonly sent?: string;
};

const MOST_MEAN_MS = 50;
const MOST_GAP_MS = 100;
const LEAST_SENT = 3; // chosen: two keys in quick succession are a hand's as well
const NUMBER = /^[+\-−]?(?:\d+[.,]?\d*|[.,]\d+)\s*(?:mm|in|inch|["″])?$/i;

/**
 * Whether keys came from a gauge that types its value or from a person's hand.
 *
 * Units:   times in milliseconds. A gauge: mean of the times between keys at most 50 ms, none over 100 ms, the end key
 *          among them; the whole text is a number (sign, digits, one point or comma, a unit or none); Enter or Tab ends it.
 * Range:   anything else is a person's, and nothing is ever dropped. A key held down is a person's. Keys that write
 *          nothing (Shift, 'Unidentified') are passed over; Backspace takes back what it takes back.
 * Source:  chosen after what scanner software does; no standard.
 */
export function readBurst(keys: readonly KeyPress[]): Burst {
  const end = keys.findIndex(({ key }) => key === 'Enter' || key === 'Tab');
  const until = end === -1 ? keys : keys.slice(0, end + 1);
  const text = textOf(until);
  const ended = until.at(-1)?.key;
  if (ended !== 'Enter' && ended !== 'Tab') return { by: 'person', text };
  if (isGauge(until, text)) return { by: 'gauge', text, ended };
  const sent = sentLast(until);
  return { by: 'person', text, ended, ...(sent !== undefined && { sent }) };
}

/** What a key that ends, or steps on, means where it is pressed. */
export type KeyMeaning = 'log' | 'next' | 'hold' | 'swallow' | 'type';

/**
 * What a key does in a reading field.
 *
 * Range:   Enter logs what the same keys typed. On an empty field Enter and PageDown are a foot switch or a presenter:
 *          next. What a finger half typed on the pad is held and never logged by a foot switch. Some phones send
 *          ArrowDown after Enter for a line feed: swallowed within 100 ms of it.
 * Source:  chosen; platform reports of gauges' line endings.
 */
export function keyMeaning(q: {
  readonly key: string;
  /** What stands in the field, and how its last character came there. */
  readonly text: string;
  readonly typedBy: 'keys' | 'pad';
  readonly sinceEnterMs?: number;
}): KeyMeaning {
  const isAfterEnter = q.sinceEnterMs !== undefined && q.sinceEnterMs <= MOST_GAP_MS;
  if (q.key === 'ArrowDown' && isAfterEnter) return 'swallow';
  if (q.key !== 'Enter' && q.key !== 'PageDown') return 'type';
  if (q.text.trim() === '') return isAfterEnter ? 'swallow' : 'next';
  return q.key === 'Enter' && q.typedBy === 'keys' ? 'log' : 'hold';
}

function isGauge(keys: readonly KeyPress[], text: string): boolean {
  const times = keys.map(({ atMs }) => atMs);
  const gaps = times.slice(1).map((atMs, index) => atMs - (times[index] ?? atMs));
  const isQuick = gaps.length > 0 && gaps.every((gap) => gap <= MOST_GAP_MS);
  const mean = gaps.reduce((so, gap) => so + gap, 0) / gaps.length;
  return isQuick && mean <= MOST_MEAN_MS && NUMBER.test(text) && keys.every(({ repeat }) => repeat !== true);
}

function sentLast(keys: readonly KeyPress[]): string | undefined {
  const runs = keys.flatMap(({ atMs }, index) => {
    const before = keys[index - 1];
    return before === undefined || atMs - before.atMs > MOST_GAP_MS ? [keys.slice(index)] : [];
  });
  const last = runs.at(-1) ?? [];
  if (textOf(last).length < LEAST_SENT || !isGauge(last, textOf(last))) return undefined;
  return runs.map(textOf).find((text) => NUMBER.test(text));
}

function textOf(keys: readonly KeyPress[]): string {
  return keys.reduce((text, { key }) => {
    if (key === 'Backspace') return text.slice(0, -1);
    return key.length === 1 ? text + key : text;
  }, '');
}
