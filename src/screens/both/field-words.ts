import type { BackupStore } from '../../store/backup-format.ts';
import type { Kept } from '../../store/kept.ts';
import { isPlainObject } from '../../store/paths.ts';
import { fieldNamed, planFor, type FieldPlan } from '../worksheets/worksheet-plan.ts';
import { planOf } from '../worksheets/worksheet-plans.ts';

const words: Readonly<Partial<Record<BackupStore, Readonly<Record<string, string>>>>> = {
  jobs: {
    what: 'what it is',
    systems: 'systems touched',
    touchesNone: 'touches none of the systems',
    state: 'open or closed',
    customerNote: 'note for the customer',
  },
  parts: { origin: 'where it comes from', swapped: 'mock-up taken out' },
  features: { kind: 'what is measured', partId: 'part' },
  readings: { struckOut: 'whether it counts' },
  cuts: {
    blank: 'size of the blank',
    lower: 'lower limit',
    upper: 'upper limit',
    cuttingTool: 'cutting tool',
    largestTake: 'largest take',
    finishTake: 'finish take',
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
  if (field === 'basis' || field === 'workedOut') return 'the sizes behind it';
  return words[store]?.[field] ?? field;
}

function worksheetWords(record: Kept, field: string, key: string): string {
  if (field === 'parts') return `part “${partName(record, key)}”`;
  const label = worksheetField(record, key)?.label ?? key;
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** What the worksheet asks under this name, as things stand on it. */
export function worksheetField(record: Kept, name: string): FieldPlan | undefined {
  const plan = planOf(String(record['kind']));
  return plan && fieldNamed(planFor(plan, textsIn(record['choices'])), name);
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
