import { isPlainObject } from '../../src/store/base/paths.ts';
import { recordsOf, type Line } from '../store/sealed-backup.ts';
import type { Kind } from './hostile-files.ts';
import { fileOfLines, lineIn, parsed, placesIn, resealed } from './hostile-lines.ts';

/** Files whose form is right and whose figures, owners, pictures and times are not. */

const never = '007999999999999-ffff-zzzz';

export const hostileFigures = {
  async 'a size whose text says another one'(whole, pick) {
    const lines = parsed(whole);
    const sizes = lines.slice(1, -1).flatMap(({ record }) => sizesIn(record));
    const other = [
      { typed: '10 mm', unit: 'mm', exact: '25.4' },
      { typed: '10', unit: 'in', exact: '10' },
      { typed: '29/64', unit: 'in', exact: '11.5093750001' },
      { typed: '.4487', unit: 'in', exact: '11.39699' },
      { typed: 'ten', unit: 'mm', exact: '10' },
    ];
    Object.assign(pick.oneOf(sizes), pick.oneOf(other));
    return { file: await fileOfLines(lines), expects: 'refused' };
  },
  async 'a size below zero where none can be'(whole, pick) {
    const lines = parsed(whole);
    const store = pick.oneOf(['readings', 'drawer', 'worksheets']);
    const sizes = recordsOf(lines, store).flatMap((record) =>
      store === 'worksheets' ? sizesIn(record['parts']) : sizesIn(record),
    );
    const typed = pick.oneOf(['-1', '-0.5', '-.4487']);
    const exact = typed === '-.4487' ? '-0.4487' : typed;
    Object.assign(pick.oneOf(sizes), { typed, unit: 'mm', exact });
    return { file: await fileOfLines(lines), expects: 'refused' };
  },
  async 'a record of one job that belongs to another'(whole, pick) {
    const lines = parsed(whole);
    const record = pick.oneOf(recordsOf(lines, pick.oneOf(['readings', 'cuts', 'photos'])));
    const jobs = recordsOf(lines, 'jobs').map(({ id }) => id);
    record['jobId'] = pick.oneOf(jobs.filter((id) => id !== record['jobId']));
    // A cut by itself belongs to no worksheet and no part.
    const isTied = ['featureId', 'worksheetId', 'partId', 'owner'].some((name) => record[name] !== undefined);
    return { file: await fileOfLines(lines), expects: isTied ? 'refused' : 'either' };
  },
  async 'a picture that unfolds to more than it says'(whole, pick) {
    const [store, field] = pick.oneOf([
      ['photos', 'preview'],
      ['photoBytes', 'bytes'],
    ] as const);
    const at = lineIn(whole, store, pick);
    const side = pick.oneOf([5001, 12_000, 65_000, 2 ** 31 - 1]);
    const text = (whole[at] ?? '').replace(
      new RegExp(`"${field}":"[^"]*"`),
      () => `"${field}":"${pngOf(side)}"`,
    );
    return resealed(whole, new Map([[at, text]]), 'refused');
  },
  async 'a signed sheet that draws itself again and again'(whole, pick) {
    const tag = pick.oneOf(['use', 'pattern', 'marker', 'clipPath', 'symbol', 'mask', 'linearGradient']);
    const levels = Array.from({ length: 7 }, (_none, level) => ({
      tag: 'g',
      attributes: { id: `l${level}` },
      children: Array.from({ length: 10 }, () => ({
        tag,
        attributes: tag === 'use' ? { href: `#l${level + 1}` } : { id: 'x' },
        children: [],
      })),
    }));
    const drawing = { tag: 'svg', attributes: {}, children: levels };
    const plain = {
      tag: 'rect',
      attributes: pick.oneOf<Line>([
        { fill: 'url(#l0)' },
        { 'marker-mid': 'url(#l0)' },
        { width: '4000000', 'stroke-dasharray': '1 1' },
        { style: 'stroke-dasharray: .001, .001' },
      ]),
      children: [],
    };
    const at = lineIn(whole, 'sheets', pick);
    const text = (whole[at] ?? '').replace(
      '"content":[',
      () => `"content":[${JSON.stringify(pick.oneOf<unknown>([drawing, plain]))},`,
    );
    return resealed(whole, new Map([[at, text]]), 'refused');
  },
  async 'a last word from the end of all time'(whole, pick) {
    const lines = parsed(whole);
    const record = pick.oneOf(recordsOf(lines, pick.oneOf(['jobs', 'features', 'cuts', 'worksheets'])));
    const stamps = isPlainObject(record['stamps']) ? record['stamps'] : {};
    record['stamps'] = { ...stamps, [pick.oneOf(['name', 'title', '*'])]: never };
    return { file: await fileOfLines(lines), expects: 'imported' };
  },
  async 'a date that there can’t be'(whole, pick) {
    const lines = parsed(whole);
    const record = pick.oneOf(recordsOf(lines, 'readings'));
    record['at'] = pick.oneOf([4_102_444_800_000, 7_258_118_399_000]);
    return { file: await fileOfLines(lines), expects: 'refused' };
  },
  async 'a tool that is better than good'(whole, pick) {
    const lines = parsed(whole);
    const record = pick.oneOf(recordsOf(lines, pick.oneOf(['tools', 'readings'])));
    const field = pick.oneOf(['mpe', 'resolution', 'repeatability']);
    Object.assign(Object(record['tool']), { [field]: pick.oneOf(['-0.02', '-1', '-0.0000001']) });
    return { file: await fileOfLines(lines), expects: 'refused' };
  },
} satisfies Readonly<Record<string, Kind>>;

function sizesIn(value: unknown): Line[] {
  return placesIn({ value }).flatMap(({ value: one }) =>
    isPlainObject(one) && typeof one['typed'] === 'string' && typeof one['exact'] === 'string'
      ? [one satisfies Line]
      : [],
  );
}

/** The first bytes of a PNG of this many points each way. */
function pngOf(side: number): string {
  const four = [24, 16, 8, 0].map((shift) => Math.floor(side / 2 ** shift) % 256);
  const start = [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52];
  return btoa(String.fromCodePoint(...start, ...four, ...four, 8, 2, 0, 0, 0));
}
