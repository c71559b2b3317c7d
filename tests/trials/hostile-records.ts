import { isPlainObject } from '../../src/store/base/paths.ts';
import { sealed, sealedTexts } from '../store/sealed-backup.ts';
import type { Kind, Pick, Whole } from './hostile-files.ts';
import { fileOfLines, lineIn, parsed, placesIn, resealed, type Made, type Place } from './hostile-lines.ts';
import { hostileWords } from './hostile-words.ts';

/** Records that somebody wrote anew: checksum and counts are right, and what they say is not. */

const anything: readonly unknown[] = [
  null, true, false, 0, -1, 0.5, 1e21, -1e300, 2 ** 53, '', '0', 'yes', '1e999', 'NaN',
  [], {}, [[]], [null], { a: 1 }, ['x'], 'x'.repeat(600), 'x'.repeat(30_000), '\ud800', '9'.repeat(500),
]; // prettier-ignore

const wordFields = new Set([
  'name', 'what', 'note', 'customerNote', 'title', 'text', 'orientation', 'grease', 'locker', 'part', 'limitsFrom',
  'how', 'why', 'material', 'signedBy', 'seenNote', 'readingsCsv', 'cutsCsv', 'engineVersion', 'drill', 'thread',
]); // prettier-ignore

export const hostileRecords = {
  async 'a value of another kind'(whole, pick) {
    return changedPlace(
      whole,
      pick,
      () => true,
      () => pick.oneOf(anything),
    );
  },
  async 'words that are markup, formulas or turn the reading round'(whole, pick) {
    const lines = parsed(whole);
    for (const { record } of lines.slice(1, -1))
      for (const { owner, name, value } of placesIn(record))
        if (typeof value === 'string' && wordFields.has(name) && pick.chance() < 0.5)
          Object.assign(owner, { [name]: pick.oneOf(hostileWords) });
    return { file: await fileOfLines(lines), expects: 'imported' };
  },
  async 'such words where no free words belong'(whole, pick) {
    const isTied = ({ name, value }: Place) =>
      typeof value === 'string' && /^(id|store|unit|kind|exact|state|mime|\w+Id)$/.test(name);
    const made = await changedPlace(whole, pick, isTied, () => pick.oneOf(hostileWords));
    return { ...made, expects: 'either' };
  },
  async 'numbers out of all bounds'(whole, pick) {
    const numbers = [
      '1e999',
      '-1e999',
      '-0',
      '-1',
      '1e308',
      '0.1',
      '1e-320',
      '123456789012345678901234567890',
      '9007199254740993',
    ];
    const isNumber = ({ value }: Place) => typeof value === 'number';
    return changedText(whole, pick, isNumber, () => pick.oneOf(numbers));
  },
  async 'a field that nobody knows'(whole, pick) {
    const extra = [
      '1e999',
      '-0',
      '[[[[[]]]]]',
      '{"a":{"b":[1,2,{"c":null}]}}',
      '"\\ud800"',
      '{"":{"":""}}',
      '12345678901234567890',
    ];
    const lines = parsed(whole);
    const at = 1 + pick.below(lines.length - 2);
    const text = (whole[at] ?? '').replace('"record":{', () => `"record":{"extra":${pick.oneOf(extra)},`);
    return resealed(whole, new Map([[at, text]]), 'either');
  },
  async 'fields that Slipfit works out itself'(whole, pick) {
    const lines = parsed(whole);
    for (const { record } of lines.slice(1, -1))
      if (isPlainObject(record) && pick.chance() < 0.3)
        Object.assign(record, { [pick.oneOf(['listedAt', 'openAt', 'broughtBack'])]: pick.oneOf(anything) });
    return { file: await fileOfLines(lines), expects: 'either' };
  },
  async 'the same id twice'(whole, pick) {
    const lines = parsed(whole);
    const at = 1 + pick.below(lines.length - 2);
    const again = structuredClone(lines[at] ?? {});
    if (isPlainObject(again['record']) && pick.chance() < 0.5)
      Object.assign(again['record'], { stamps: { '*': '001800000000000-0000-other' } });
    lines.splice(at + 1 + pick.below(lines.length - at - 1), 0, again);
    return { file: await fileOfLines(lines), expects: 'refused' };
  },
  async 'something that belongs to nothing'(whole, pick) {
    const isReference = ({ name }: Place) => /^(jobId|featureId|pieceId|worksheetId|partId)$/.test(name);
    const made = await changedPlace(whole, pick, isReference, () => 'nowhere');
    return { ...made, expects: 'refused' };
  },
  async 'an owner left out'(whole, pick) {
    const lines = parsed(whole);
    const owners = new Set(['jobs', 'features', 'drawer', 'photos']);
    const at = pick.oneOf(lines.flatMap(({ store }, index) => (owners.has(String(store)) ? [index] : [])));
    return { file: await fileOfLines(lines.filter((_line, index) => index !== at)), expects: 'refused' };
  },
  async 'names that reach into an object’s making'(whole, pick) {
    const name = pick.oneOf([
      '__proto__',
      'constructor',
      'prototype',
      '\\u005f_proto__',
      '\\u005f\\u005fproto\\u005f_',
    ]);
    const put = pick.oneOf(['{"hacked":true}', '{"prototype":{"hacked":true}}', 'null', '1', '[]']);
    const at = 1 + pick.below(whole.length - 2);
    const line = whole[at] ?? '';
    const opens = [...line.matchAll(/\{(?=")/g)].map(({ index }) => index + 1);
    const into = pick.oneOf(opens);
    return resealed(
      whole,
      new Map([[at, `${line.slice(0, into)}"${name}":${put},${line.slice(into)}`]]),
      'refused',
    );
  },
  async 'such names as entries of a map'(whole, pick) {
    const at = lineIn(whole, pick.oneOf(['worksheets', 'cuts', 'checks']), pick);
    const name = pick.oneOf(['__proto__', 'constructor', 'prototype']);
    const text = (whole[at] ?? '').replace(
      /"(sizes|choices|parts|passes|takes)":\{/,
      (found) => `${found}"${name}":{"at":1},`,
    );
    return resealed(whole, new Map([[at, text]]), text === whole[at] ? 'imported' : 'refused');
  },
  async 'nested a hundred thousand deep'(whole, pick) {
    const [open, close] = pick.oneOf([
      ['[', ']'],
      ['{"a":', '}'],
      ['[{"b":', '}]'],
    ] as const);
    const deep = `${open.repeat(100_000)}1${close.repeat(100_000)}`;
    const at = pick.below(whole.length - 1);
    const text = (whole[at] ?? '').replace('{', () => `{"extra":${deep},`);
    return resealed(whole, new Map([[at, text]]), 'refused');
  },
  async 'stamps that no clock gave'(whole, pick) {
    const stamps = [
      '007999999999999-ffff-zzzz', '007258118400000-ffff-z', '000000000000000-0000-seed', '009999999999999-0000-x',
      '253370764800000-0000-x', '', '001700000000000-0000-', '001700000000000-FFFF-x', `001700000000000-0000-${'a'.repeat(41)}`,
      '\u0660\u0660\u0661700000000000-0000-x',
    ]; // prettier-ignore
    const lines = parsed(whole);
    const stamp = pick.oneOf(stamps);
    for (const { record } of lines.slice(1, -1))
      if (isPlainObject(record) && pick.chance() < 0.2)
        record['stamps'] = pick.oneOf<unknown>([
          { '*': stamp },
          { '*': stamp, 'name.x': stamp, deleted: stamp },
        ]);
    return { file: await fileOfLines(lines), expects: 'either' };
  },
  async 'stamps of another form'(whole, pick) {
    const many = Object.fromEntries(
      Array.from({ length: 5000 }, (_none, at) => [`f${at}`, '001700000000000-0000-x']),
    );
    const stamps: readonly unknown[] = [
      undefined,
      null,
      [],
      {},
      '',
      { '*': 1 },
      { name: '001700000000000-0000-x' },
      { ...many, '*': '001700000000000-0000-x' },
    ];
    const lines = parsed(whole);
    const line = lines[1 + pick.below(lines.length - 2)] ?? {};
    if (isPlainObject(line['record'])) line['record']['stamps'] = pick.oneOf(stamps);
    return { file: await fileOfLines(lines), expects: 'either' };
  },
  async 'everything removed, or some of it'(whole, pick) {
    const share = pick.oneOf([0.05, 0.5, 1]);
    const lines = parsed(whole);
    for (const { record, store } of lines.slice(1, -1))
      if (isPlainObject(record) && store !== 'sheets' && pick.chance() < share)
        Object.assign(record, { deleted: '001900000000000-0000-other' });
    return { file: await fileOfLines(lines), expects: 'imported' };
  },
  async 'records that Slipfit could not read itself'(whole, pick) {
    const lines = parsed(whole);
    const at = 1 + pick.below(lines.length - 2);
    const { store, ...rest } = lines[at] ?? {};
    lines[at] = { unreadable: store, ...rest };
    return { file: await fileOfLines(lines), expects: 'imported' };
  },
  async 'two values under one name'(whole, pick) {
    const at = 1 + pick.below(whole.length - 2);
    const put = pick.oneOf(['"id":"x"', '"stamps":{}', '"jobId":"nowhere"', '"name":5', '"deleted":7']);
    return resealed(
      whole,
      new Map([[at, (whole[at] ?? '').replace('"record":{', () => `"record":{${put},`)]]),
      'either',
    );
  },
} satisfies Readonly<Record<string, Kind>>;

/** The same backup, and in place of all that the fitter wrote in words one hostile word after the other. */
export async function withHostileWords(whole: Whole): Promise<string> {
  const lines = parsed(whole);
  let turn = 0;
  for (const { record } of lines.slice(1, -1))
    for (const { owner, name, value } of placesIn(record))
      if (typeof value === 'string' && wordFields.has(name))
        Object.assign(owner, { [name]: hostileWords[(turn += 1) % hostileWords.length] });
  return sealed(lines);
}

async function changedPlace(
  whole: Whole,
  pick: Pick,
  isWanted: (place: Place) => boolean,
  value: () => unknown,
): Made {
  const lines = parsed(whole);
  const places = lines.slice(1, -1).flatMap(({ record }) => placesIn(record).filter(isWanted));
  const { owner, name } = pick.oneOf(places);
  Object.assign(owner, { [name]: value() });
  return { file: await fileOfLines(lines), expects: 'either' };
}

/** As above, for a value that JSON.stringify would not write. */
async function changedText(
  whole: Whole,
  pick: Pick,
  isWanted: (place: Place) => boolean,
  text: () => string,
): Made {
  const mark = '"put here"';
  const lines = parsed(whole);
  const { owner, name } = pick.oneOf(
    lines.slice(1, -1).flatMap(({ record }) => placesIn(record).filter(isWanted)),
  );
  Object.assign(owner, { [name]: 'put here' });
  const body = lines.slice(0, -1).map((line) => JSON.stringify(line).replace(mark, text));
  return { file: new Blob([await sealedTexts(body)]), expects: 'either' };
}
