import type { BackupStore } from '../../store/base/stores.ts';
import type { Kept } from '../../store/base/kept.ts';
import { isPlainObject } from '../../store/base/paths.ts';
import type { Field } from '../../engine/worksheets/fields.ts';
import { fieldNamed } from '../worksheets/kind-fields.ts';

const words: Readonly<Partial<Record<BackupStore, Readonly<Record<string, string>>>>> = {
  jobs: {
    what: 'what it is',
    systems: 'systems touched',
    touchesNone: 'touches none of the systems',
    state: 'open or closed',
    customerNote: 'note for the customer',
    customer: 'customer',
    machine: 'machine',
  },
  parts: { origin: 'where it comes from', swapped: 'mock-up taken out' },
  features: { kind: 'what is measured', partId: 'part', elsewhere: 'what was read of another one' },
  readings: { struckOut: 'whether it counts' },
  cuts: {
    blank: 'size of the blank',
    lower: 'lower limit',
    upper: 'upper limit',
    cuttingTool: 'cutting tool',
    largestTake: 'largest take',
    finishTake: 'finish take',
    setOver: 'set over by',
    threading: 'wires and infeed of the thread',
    setOverWithin: 'set over, how far it may be off',
    stands: 'where it stands',
    zeroShift: 'how far its zero is off',
    made: 'whether it is drilled',
    compoundDegrees: 'compound over, degrees',
    state: 'how far it is',
    of: 'side of the metal',
    partId: 'part',
    worksheetId: 'worksheet',
  },
  checks: { by: 'how it is measured', lower: 'lower limit', upper: 'upper limit', how: 'what to do' },
  steps: {
    text: 'what to do',
    cureHours: 'hours to cure',
    cotterPin: 'cotter pin',
    partIds: 'parts',
    worksheetId: 'worksheet',
    done: 'done',
  },
  rechecks: {
    what: 'what to look at',
    afterDays: 'after days',
    afterDistance: 'after distance',
    from: 'counted from',
    fromOdometer: 'odometer at the start',
    done: 'done',
  },
  money: { what: 'what for' },
  drawer: { inside: 'inside diameter', outside: 'outside diameter' },
  tools: { tool: 'tool', lastChecked: 'last checked' },
};

/** What a field is called on its own screen. */
export function fieldWords(store: BackupStore, record: Kept, path: string): string {
  const [field = '', key = ''] = path.split(/\.(.*)/s);
  if (store === 'worksheets' && key !== '') return worksheetWords(record, field, key);
  if (field === 'passes') return 'a pass';
  if (field === 'takes') return 'a go at it';
  if (field === 'reasons') return 'why it may stand';
  if (field === 'got') return 'what is there';
  if (field === 'toGet') return 'what is to be got';
  if (field === 'basis' || field === 'workedOut') return 'the sizes behind it';
  return words[store]?.[field] ?? field;
}

function worksheetWords(record: Kept, field: string, key: string): string {
  if (field === 'parts') return `part “${partName(record, key)}”`;
  const label = worksheetField(record, key)?.label ?? key;
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** What the worksheet asks under this name, as things stand on it. */
export function worksheetField(record: Kept, name: string): Field | undefined {
  return fieldNamed({ kind: String(record['kind']), choices: textsIn(record['choices']) }, name);
}

function textsIn(choices: unknown): Readonly<Record<string, string>> {
  if (!isPlainObject(choices)) return {};
  return Object.fromEntries(Object.entries(choices).map(([name, value]) => [name, String(value)]));
}

function partName(record: Kept, key: string): string {
  const parts = isPlainObject(record['parts']) ? record['parts'] : {};
  const part = parts[key];
  return isPlainObject(part) ? String(part['name']) : 'taken out';
}

/** What a record is called in a list: its name, title or own words. */
export function recordWords(store: BackupStore, record: Kept, names: ReadonlyMap<string, string>): string {
  if (store === 'readings') {
    const of = names.get(`features/${String(record['featureId'])}`) ?? '';
    return [of, `${String(record['typed'])} ${String(record['unit'])}`].filter(Boolean).join(' · ');
  }
  if (store === 'tools' && isPlainObject(record['tool'])) return String(record['tool']['name']);
  if (store === 'photos') return 'photo';
  const own = ['title', 'name', 'text', 'what'].map((field) => record[field]);
  const name = own.find((text) => typeof text === 'string' && text !== '');
  return typeof name === 'string' ? name : '';
}
