import { marked } from '../../engine/length/decimal-text.ts';
import { isPlainObject } from '../../store/base/paths.ts';
import type { Kept } from '../../store/base/kept.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { MACHINE_WORDS, STATE_WORDS, TOOL_WORDS } from '../cuts/cut-words.ts';
import { timeWords } from '../common/day-words.ts';
import { worksheetField } from './field-words.ts';
import { listed } from '../../engine/length/say-words.ts';

export type Names = ReadonlyMap<string, string>;

type ValueOf = { readonly path: string; readonly record: Kept; readonly names: Names };

const plainWords: Readonly<Record<string, string>> = {
  ...STATE_WORDS,
  ...MACHINE_WORDS,
  ...TOOL_WORDS,
  'by-eye': 'by eye',
};

/** A value of either phone in the fitter's words; a size as it was typed. */
export function valueWords(value: unknown, { path, record, names }: ValueOf): string {
  const [field = '', key = ''] = path.split(/\.(.*)/s);
  if (value === undefined || value === '') return absent(field);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return isATime(field) ? timeWords(value) : marked(value);
  if (typeof value === 'string') return textWords(value, { field, key, record, names });
  if (Array.isArray(value)) {
    const texts = value.map((one) => names.get(`parts/${String(one)}`) ?? String(one));
    return texts.length === 0 ? 'none' : listed(texts);
  }
  return isPlainObject(value) ? thingWords(value, { field, names }) : '';
}

function absent(field: string): string {
  if (field === 'struckOut') return 'counts';
  if (field === 'done') return 'not done';
  if (field === 'parts' || field === 'passes' || field === 'takes') return 'taken out';
  return 'left empty';
}

function isATime(field: string): boolean {
  return field === 'lastChecked' || field === 'from' || field === 'at';
}

type TextOf = Omit<ValueOf, 'path'> & { readonly field: string; readonly key: string };

function textWords(value: string, { field, key, record, names }: TextOf): string {
  if (field === 'choices') {
    const asked = worksheetField(record, key);
    if (asked?.enter === 'choice') return asked.options.find((one) => one.value === value)?.words ?? value;
    return asked?.enter === 'number' ? `${value} ${asked.unit}` : value;
  }
  if (field === 'material') return materialNamed(value)?.name ?? value;
  if (field === 'partId') return names.get(`parts/${value}`) ?? 'a part';
  if (field === 'worksheetId') return names.get(`worksheets/${value}`) ?? 'a worksheet';
  const isWord = ['state', 'origin', 'by', 'machine', 'cuttingTool'].includes(field);
  return isWord ? (plainWords[value] ?? value) : value;
}

type Thing = Readonly<Record<string, unknown>>;

function thingWords(
  value: Thing,
  { field, names }: { readonly field: string; readonly names: Names },
): string {
  if (value['from'] === 'feature') return readFrom(value, names);
  if (typeof value['typed'] === 'string') return typedWords(value);
  switch (field) {
    case 'struckOut':
      return `struck out: ${String(value['why'])}`;
    case 'done':
    case 'swapped':
      return `${timeWords(Number(value['at']))}, ${String(value['by'])}`;
    case 'odometer':
      return `${String(value['reading'])} ${String(value['unit'])}`;
    case 'parts':
      return partWords(value, names);
    case 'passes':
      return withStrikeOut(isPlainObject(value['measured']) ? typedWords(value['measured']) : '', value);
    case 'takes':
      return seenWords(value);
    case 'tool':
      return toolWords(value);
    case 'reasons':
      return String(value['why']);
    case 'elsewhere':
      return `in ${String(value['jobName'])}`;
    case 'basis':
    case 'workedOut':
      return 'as they were there';
    default:
      return Object.values(value).map(String).join(', ');
  }
}

function readFrom({ featureId }: Thing, names: Names): string {
  const name = names.get(`features/${String(featureId)}`);
  return name ? `readings of ${name}` : 'readings';
}

function typedWords({ typed, unit, source }: Thing): string {
  const text = marked(String(typed));
  const size = /[a-z"″]/i.test(text) ? text : `${text} ${String(unit)}`;
  return typeof source === 'string' && source !== '' ? `${size} (${source})` : size;
}

function partWords({ name, size, count }: Thing, names: Names): string {
  const words = isPlainObject(size) ? thingWords(size, { field: 'size', names }) : 'no size yet';
  return `${String(name)}, ${words}${Number(count) > 1 ? ` × ${String(count)}` : ''}`;
}

function withStrikeOut(words: string, { struckOut }: Thing): string {
  return isPlainObject(struckOut) ? `${words}, struck out: ${String(struckOut['why'])}` : words;
}

function seenWords({ seen, seenNote, at }: Thing): string {
  const note = typeof seenNote === 'string' && seenNote !== '' ? `: ${seenNote}` : '';
  if (typeof seen !== 'string') return timeWords(Number(at));
  return `${seen === 'holds' ? 'good' : 'no good'}${note}`;
}

function toolWords({ name, mpe }: Thing): string {
  return typeof mpe === 'string' ? `${String(name)}, ±${mpe} mm` : String(name);
}
