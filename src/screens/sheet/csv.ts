import { inPoints } from '../../engine/length/decimal-text.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { cutName, tapOfCut } from '../../engine/thread/tap-name.ts';
import { csvCells, csvText } from './csv-text.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { decimalText, exactDecimalText, toText, type Length } from '../../engine/length/length.ts';
import { toolThatCounts } from '../../engine/reading/measuring-tool.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { passToolWords } from '../cuts/pass-tool-words.ts';
import { isElsewhere, recordsElsewhere } from '../readings/elsewhere.ts';
import { stopsOf } from '../readings/reading-figure.ts';
import { asTyped } from '../../engine/length/show.ts';
import { warmthOfDay } from '../readings/warmth.ts';
import { countedAt20, warmOf } from '../../store/kept/read-at-20.ts';
import { keptWords } from '../../store/base/plain-words.ts';
import type { Cut, CutPass, Feature, Id, Part, ReadingRecord, StruckOut } from '../../store/base/records.ts';

type Cell = string | number;
type Column<T> = readonly [heading: string, cell: (row: T) => Cell];

/**
 * What a spreadsheet would take for a formula, ordinary and full width (OWASP, "CSV injection"): an apostrophe in front
 * makes it text. A plain number keeps its minus.
 */
const FORMULA = /^(?!-?\d+(?:\.\d+)?$)[=+\-@\t\r\n\0＝＋－＠]/;
// Chosen, not published: a hundredth of a millionth of an inch, where a size in millimetres never ends in inches.
const INCH_PLACES = 8;
const MOST_PLACES = 15;

/** A job's readings, one a line, struck-out ones with why. */
export function readingsCsv({
  features,
  parts,
  readings,
}: {
  readonly features: readonly Feature[];
  readonly parts: readonly Part[];
  readonly readings: readonly ReadingRecord[];
}): string {
  const featureOf = (one: ReadingRecord) => features.find(({ id }) => id === one.featureId);
  const partOf = (one: ReadingRecord) => parts.find(({ id }) => id === featureOf(one)?.partId);
  const ofSame = (one: ReadingRecord) => readings.filter(({ featureId }) => featureId === one.featureId);
  // A size that nobody read on this part stands on another one's readings: they are in the table, and it says so.
  const ofOthers = features.flatMap((feature) => {
    const own = readings.filter(({ featureId }) => featureId === feature.id);
    return isElsewhere(feature, own) ? recordsElsewhere(feature, feature.elsewhere) : [];
  });
  const elsewhere = new Set(ofOthers);
  const warmOfDay = (one: ReadingRecord) => warmthOfDay(one, ofSame(one));
  return table<ReadingRecord>(
    [...readings, ...ofOthers],
    [
      ['reading of', (one) => featureOf(one)?.name ?? ''],
      ['kind', (one) => featureOf(one)?.kind ?? ''],
      ['part', (one) => partOf(one)?.name ?? ''],
      ...sizeColumns<ReadingRecord>('', (one) => one),
      ['does not go, mm', (one) => stopsMm(one)],
      ['does not go, inch', (one) => stopsInches(one)],
      ['place', ({ place }) => place ?? ''],
      ['direction, degrees', ({ direction }) => direction ?? ''],
      ['tool', toolBeside],
      ['tool error limit ±, mm', ({ tool, exact }) => toText(toolThatCounts(tool, exact).mpe)],
      ['tool error limit ±, inch', ({ tool, exact }) => inches(toolThatCounts(tool, exact).mpe)],
      ['zero checked', ({ zeroChecked }) => (zeroChecked ? 'yes' : 'no')],
      ['warmth', (one) => degreesOf(warmOfDay(one))],
      ['metal', (one) => warmOfDay(one).warmth?.material ?? ''],
      ['counts at 20 °C, mm', (one) => at20Mm(one.exact, warmOfDay(one))],
      ['read at', ({ at }) => timeText(at)],
      ...struckOutColumns<ReadingRecord>((one) => one),
      [
        'read on another one, in job',
        (one) => (elsewhere.has(one) ? (featureOf(one)?.elsewhere?.jobName ?? '') : ''),
      ],
    ],
  );
}

function degreesOf({ warmth }: Pick<ReadingRecord, 'warmth'>): string {
  return warmth ? `${warmth.degrees} ${warmth.unit}` : '';
}

/** Empty where the size counts as it was read. */
function at20Mm(exact: Length, kept: Parameters<typeof warmOf>[0]): string {
  return warmOf(kept) ? toText(countedAt20(exact, kept).exact) : '';
}

function stopsMm(reading: ReadingRecord): string {
  const stops = stopsOf(reading);
  return stops ? toText(stops.exact) : '';
}

function stopsInches(reading: ReadingRecord): string {
  const stops = stopsOf(reading);
  return stops ? inches(stops.exact) : '';
}

type CutLine = { readonly cut: Cut; readonly pass?: CutPass; readonly number: Cell };

/** A job's cuts, a line for each measurement at the machine; a cut not begun has one line. `older` are those
 * whose sizes have changed since. */
export function cutsCsv(cuts: readonly Cut[], older: ReadonlySet<Id>): string {
  return table<CutLine>(cuts.flatMap(linesOf), [
    ['cut', ({ cut }) => cutName(cut)],
    ['part', ({ cut }) => cut.part],
    ['operation', ({ cut }) => cut.operation],
    ['state', ({ cut }) => cut.state],
    ['machine', ({ cut }) => cut.machine],
    ['cutting tool', ({ cut }) => cut.cuttingTool],
    ['material', ({ cut }) => cut.material ?? ''],
    ['drill', ({ cut }) => cut.drill ?? ''],
    ['tap', ({ cut }) => tapOfCut(cut) ?? ''],
    ...sizeColumns<CutLine>('blank', ({ cut }) => cut.blank),
    ...sizeColumns<CutLine>('target', ({ cut }) => cut.target),
    ...sizeColumns<CutLine>('lower limit', ({ cut }) => cut.lower),
    ...sizeColumns<CutLine>('upper limit', ({ cut }) => cut.upper),
    ['limits from', ({ cut }) => cut.limitsFrom],
    ...sizeColumns<CutLine>('set over by', ({ cut }) => cut.setOver),
    ...sizeColumns<CutLine>('x from the zero', ({ cut }) => cut.stands?.x),
    ...sizeColumns<CutLine>('y from the zero', ({ cut }) => cut.stands?.y),
    ['compound over, degrees', ({ cut }) => cut.compoundDegrees ?? ''],
    ...sizeColumns<CutLine>('over wires of', ({ cut }) => cut.threading?.wire),
    ['infeed', ({ cut }) => cut.threading?.infeed ?? ''],
    ['assumed', ({ cut }) => cut.assumed ?? ''],
    ['strength', ({ cut }) => sayStrengthOfCut(cut)],
    ['older than its sizes', ({ cut }) => (older.has(cut.id) ? 'yes' : '')],
    ['measurement', ({ number }) => number],
    ...sizeColumns<CutLine>('to come off', ({ pass }) => pass?.asked),
    ...sizeColumns<CutLine>('measured', ({ pass }) => pass?.measured),
    ['tool', ({ cut, pass }) => passTool(cut, pass)],
    ['warmth', ({ pass }) => (pass ? degreesOf(pass) : '')],
    ['counts at 20 °C, mm', ({ pass }) => (pass ? at20Mm(pass.measured.exact, pass) : '')],
    ['measured at', ({ pass }) => (pass ? timeText(pass.at) : '')],
    ...struckOutColumns<CutLine>(({ pass }) => pass ?? {}),
  ]);
}

/** Why things that stop the signing may stand, one a line. */
export function reasonsCsv(
  reasons: readonly {
    readonly what: string;
    readonly why: string;
    readonly by: string;
    readonly at?: number;
  }[],
): string {
  return table(reasons, [
    ['what', ({ what }) => what],
    ['why it may stand', ({ why }) => why],
    ['written by', ({ by }) => by],
    ['written at', ({ at }) => (at === undefined ? '' : timeText(at))],
  ]);
}

function passTool(cut: Cut, pass: CutPass | undefined): string {
  return pass ? passToolWords(cut, pass) : '';
}

function linesOf(cut: Cut): readonly CutLine[] {
  const passes = Object.values(cut.passes).toSorted((a, b) => a.at - b.at);
  if (passes.length === 0) return [{ cut, number: '' }];
  return passes.map((pass, index) => ({ cut, pass, number: index + 1 }));
}

/** As typed with its unit, so that a spreadsheet doesn't take 3/8 for a date; then as numbers. */
function sizeColumns<T>(name: string, size: (row: T) => Entry | undefined): readonly Column<T>[] {
  const cell = (text: (entry: Entry) => string) => (row: T) => {
    const entry = size(row);
    return entry ? text(entry) : '';
  };
  const heading = (what: string) => (name === '' ? what : `${name}, ${what}`);
  return [
    [heading('as typed'), cell(asTyped)],
    [heading('mm'), cell(({ exact }) => toText(exact))],
    [heading('inch'), cell(({ exact }) => inches(exact))],
  ];
}

function struckOutColumns<T>(of: (row: T) => { readonly struckOut?: StruckOut }): readonly Column<T>[] {
  return [
    ['struck out', (row) => (of(row).struckOut ? 'yes' : '')],
    ['struck out why', (row) => of(row).struckOut?.why ?? ''],
  ];
}

/**
 * A table that was signed, on this phone or another: a file may have brought one that was never written here. Each cell is
 * made harmless once more; one that is so already stays as it is.
 */
export function harmlessCsv(signed: string): string {
  return harmless(csvCells(signed));
}

function harmless(rows: readonly (readonly Cell[])[]): string {
  return csvText(rows.map((row) => row.map(harmlessCell)));
}

/** Text that a spreadsheet would take for a formula begins with an apostrophe, and is quoted with it. */
function harmlessCell(cell: Cell): { readonly text: string; readonly quoted: boolean } {
  const text = String(cell);
  const isFormula = typeof cell === 'string' && FORMULA.test(text);
  return isFormula ? { text: `'${text}`, quoted: true } : { text, quoted: isQuoted(cell) };
}

// Where a comma is the decimal mark, a spreadsheet cuts at the semicolon; at a tab it may cut anywhere. What has its
// apostrophe already is written as it was when it got it.
function isQuoted(cell: unknown): boolean {
  return typeof cell === 'string' && /[;\t]|^'[=+\-@\t\r\n\0＝＋－＠]/.test(cell);
}

function table<T>(rows: readonly T[], columns: readonly Column<T>[]): string {
  // As RFC 4180 has it, with commas between cells, and so with points in every shop: it is read by machines.
  const cells = inPoints(() => [
    columns.map(([heading]) => heading),
    ...rows.map((row) => columns.map(([, cell]) => plain(cell(row)))),
  ]);
  return `${harmless(cells)}\r\n`;
}

// What closes a Hebrew or Arabic name off in a sentence is nothing for a cell of its own.
function plain(cell: Cell): Cell {
  return typeof cell === 'string' ? keptWords(cell) : cell;
}

/** Exact where it ends soon, else to a hundredth of a millionth. */
function inches(length: Length): string {
  const exact = exactDecimalText(length, 'in');
  return exact.length <= MOST_PLACES ? exact : decimalText(length, 'in', INCH_PLACES);
}

/** Local time with its offset (ISO 8601). */
export function timeText(ms: number): string {
  const offset = -new Date(ms).getTimezoneOffset();
  const local = new Date(ms + offset * 60_000).toISOString().slice(0, 19);
  const two = (count: number) => String(Math.trunc(count)).padStart(2, '0');
  const size = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}
