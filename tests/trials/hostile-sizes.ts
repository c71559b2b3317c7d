import { sealedTexts } from '../store/sealed-backup.ts';
import type { Kind, Whole } from './hostile-files.ts';
import { lineIn } from './hostile-lines.ts';

const MEGABYTE = 1_000_000;

/** Files that want to fill the memory. They are put together from pieces, as they would themselves fill it else. */
export const hostileSizes = {
  async 'a name of 100 MB'(whole, pick) {
    const at = lineIn(whole, 'jobs', pick);
    const line = whole[at] ?? '';
    const cut = line.indexOf('"name":"') + '"name":"'.length;
    return {
      file: new Blob([
        ...withFeeds(whole.slice(0, at)),
        line.slice(0, cut),
        ...many(pick.oneOf(['x', '\\n', 'é', '[']), 100),
        line.slice(cut),
        '\n',
        ...withFeeds(whole.slice(at + 1)),
      ]),
      expects: 'refused',
    };
  },
  async '100 MB of nothing but one character'(_whole, pick) {
    return {
      file: new Blob(many(pick.oneOf(['x', ' ', '\n', '[', '"', '\u0000', '0']), 100)),
      expects: 'refused',
    };
  },
  async '100 MB of empty lines behind a right first line'(whole, pick) {
    return {
      file: new Blob([`${whole[0]}\n`, ...many(pick.oneOf(['\n', '{}\n', ' ']), 100)]),
      expects: 'refused',
    };
  },
  async 'a picture of 100 MB'(whole, pick) {
    const at = lineIn(whole, 'photoBytes', pick);
    const line = whole[at] ?? '';
    const cut = line.indexOf('"bytes":"') + '"bytes":"'.length;
    const pieces = [line.slice(0, cut), ...many('AAAA', 100), line.slice(cut), '\n'];
    return {
      file: new Blob([...withFeeds(whole.slice(0, at)), ...pieces, ...withFeeds(whole.slice(at + 1))]),
      expects: 'refused',
    };
  },
  async 'a picture just over what a photo may be'(whole, pick) {
    const at = lineIn(whole, 'photoBytes', pick);
    const bytes = `${'A'.repeat(10_666_668)}AA==`;
    const line = (whole[at] ?? '').replace(/"bytes":"[^"]*"/, () => `"bytes":"${bytes}"`);
    return { file: new Blob([await sealedTexts(changed(whole, at, line))]), expects: 'refused' };
  },
  async 'a line of millions of little things'(whole, pick) {
    const little = pick.oneOf(['{}', '[]', '0', '""', '{"a":0}', '[[]]', '1e9', 'null']);
    const list = `[${`${little},`.repeat(Math.floor(11_500_000 / (little.length + 1)))}0]`;
    const at = pick.oneOf([
      0,
      lineIn(whole, 'jobs', pick),
      lineIn(whole, 'sheets', pick),
      lineIn(whole, 'photoBytes', pick),
    ]);
    const line = (whole[at] ?? '').replace(/\}$/, () => `,"extra":${list}}`);
    return { file: new Blob([await sealedTexts(changed(whole, at, line))]), expects: 'either' };
  },
  async '30 MB of a field that nobody knows, in one job after another'(whole, pick) {
    const at = lineIn(whole, 'jobs', pick);
    const line: { record: { signedOff?: unknown } } = JSON.parse(whole[at] ?? '');
    // A job signed by another one's sheet is refused for that.
    const { signedOff: _signedOff, ...record } = line.record;
    const jobs = Array.from({ length: 32 }, (_none, index) =>
      JSON.stringify({ ...line, record: { ...record, id: `big-${index}`, extra: 'é'.repeat(950_000) } }),
    );
    const header = JSON.parse(whole[0] ?? '');
    header.counts.jobs += jobs.length;
    const body = [JSON.stringify(header), ...jobs, ...whole.slice(1, -1)];
    return { file: new Blob([await sealedTexts(body)]), expects: 'imported' };
  },
} satisfies Readonly<Record<string, Kind>>;

function many(text: string, megabytes: number): Blob[] {
  const piece = new Blob([text.repeat(Math.ceil(MEGABYTE / text.length))]);
  return Array.from({ length: megabytes }, () => piece);
}

function withFeeds(lines: Whole): string[] {
  return lines.map((line) => `${line}\n`);
}

function changed(whole: Whole, at: number, line: string): string[] {
  return whole.slice(0, -1).map((one, index) => (index === at ? line : one));
}
