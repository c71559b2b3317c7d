import type { Kind, Pick } from './hostile-files.ts';

/** What happens to a file's bytes on their way, and files that never were a backup. No checksum is made right again. */
export const hostileBytes = {
  async 'bits turned round'(whole, pick) {
    const bytes = bytesOf(whole);
    for (let count = 1 + pick.below(8); count > 0; count -= 1) {
      const at = pick.below(bytes.length);
      bytes[at] = (bytes[at] ?? 0) ^ (1 << pick.below(8));
    }
    return { file: new Blob([bytes]), expects: 'either' };
  },
  async 'bytes put in at random'(whole, pick) {
    const text = textOf(whole);
    const at = pick.below(text.length);
    return { file: new Blob([text.slice(0, at), noise(pick), text.slice(at)]), expects: 'refused' };
  },
  async 'cut off'(whole, pick) {
    const text = textOf(whole);
    // Without its last line feed a file is still whole.
    return { file: new Blob([text.slice(0, pick.below(text.length - 1))]), expects: 'refused' };
  },
  async 'a piece missing'(whole, pick) {
    const text = textOf(whole);
    const at = pick.below(text.length - 2);
    return {
      file: new Blob([text.slice(0, at), text.slice(at + 1 + pick.below(400))]),
      expects: 'either',
    };
  },
  async 'a piece twice'(whole, pick) {
    const text = textOf(whole);
    const at = pick.below(text.length - 2);
    const end = at + 1 + pick.below(2000);
    return { file: new Blob([text.slice(0, end), text.slice(at)]), expects: 'refused' };
  },
  async 'lines swapped'(whole, pick) {
    const a = pick.below(whole.length - 1);
    const b = a + 1 + pick.below(whole.length - a - 1);
    const swapped = whole.map((line, at) => whole[at === a ? b : at === b ? a : at] ?? line);
    return { file: fileOf(swapped), expects: 'refused' };
  },
  async 'a line left out'(whole, pick) {
    const at = pick.below(whole.length);
    return { file: fileOf(whole.filter((_line, index) => index !== at)), expects: 'refused' };
  },
  async 'a line twice'(whole, pick) {
    const at = pick.below(whole.length);
    return { file: fileOf([...whole.slice(0, at + 1), ...whole.slice(at)]), expects: 'refused' };
  },
  async 'two backups in one'(whole) {
    return { file: fileOf([...whole, ...whole]), expects: 'refused' };
  },
  async 'the checksum wrong'(whole, pick) {
    const sum = Array.from({ length: 64 }, () => pick.below(16).toString(16)).join('');
    const wrong = [sum, '', 'x'.repeat(64), sum.toUpperCase(), '0'];
    const end = JSON.stringify({ lines: whole.length - 1, checksum: pick.oneOf(wrong) });
    return { file: fileOf([...whole.slice(0, -1), end]), expects: 'refused' };
  },
  async 'the last line of another kind'(whole, pick) {
    const end = whole.at(-1) ?? '';
    const ends = [
      end.replace(/"lines":\d+/, '"lines":1e999'),
      end.replace(/"lines":\d+/, '"lines":-1'),
      end.replace(/"lines":/, '"lines":"'),
      end.replace('checksum', 'checksum2'),
      end.replace(/"checksum":"/, '"checksum":["'),
      '{"checksum":null}',
      '[]',
      'null',
      '',
    ];
    return { file: fileOf([...whole.slice(0, -1), pick.oneOf(ends)]), expects: 'refused' };
  },
  async 'lines ended as another system does'(whole) {
    return { file: new Blob([whole.map((line) => `${line}\r\n`).join('')]), expects: 'imported' };
  },
  async 'a byte order mark before it'(whole) {
    return { file: new Blob(['\ufeff', textOf(whole)]), expects: 'imported' };
  },
  async 'in another encoding'(whole, pick) {
    const text = textOf(whole);
    const wide = new Uint16Array(text.length);
    for (let at = 0; at < text.length; at += 1) wide[at] = text.charCodeAt(at);
    const pieces = pick.oneOf([[wide], [new Uint8Array([0xff, 0xfe]), wide], ['\ufeff\ufeff', text]]);
    return { file: new Blob(pieces), expects: 'refused' };
  },
  async 'zero bytes in it'(whole, pick) {
    const text = textOf(whole);
    const at = pick.below(text.length);
    return { file: new Blob([text.slice(0, at), '\u0000', text.slice(at)]), expects: 'refused' };
  },
  async 'spaces and empty lines in it'(whole, pick) {
    const at = 1 + pick.below(whole.length - 2);
    const put = pick.oneOf(['', ' ', '\t', '\u2028', '\u00a0']);
    return { file: fileOf([...whole.slice(0, at), put, ...whole.slice(at)]), expects: 'refused' };
  },
  async 'no backup at all'(_whole, pick) {
    return { file: new Blob(pick.oneOf(strangers(pick))), expects: 'refused' };
  },
} satisfies Readonly<Record<string, Kind>>;

function strangers(pick: Pick): readonly BlobPart[][] {
  const random = Uint8Array.from({ length: 1 + pick.below(5000) }, () => pick.below(256));
  return [
    [],
    ['\n'],
    ['\n\n\n{}\n'],
    [new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), random],
    [new Uint8Array([0x50, 0x4b, 0x03, 0x04]), random],
    [new Uint8Array([0x1f, 0x8b, 0x08]), random],
    [new Uint8Array([0xff, 0xd8, 0xff, 0xe0]), random],
    [random],
    ['%PDF-1.7\n', random],
    ['<!doctype html><title>backup</title><script>alert(1)</script>'],
    ['feature,value\r\nbore,11.4\r\n'],
    ['{"format":"slipfit backup"}'],
    ['{"format":"slipfit backup","version":3}\n'],
    ['[{"format":"slipfit backup","version":3,"counts":{}}]\n'],
    ['{"format":["slipfit backup"],"version":3,"counts":{}}\n'],
    ['"slipfit backup"'],
    ['null\n'.repeat(3)],
    ['[', '['.repeat(100_000)],
    ['{"a":'.repeat(100_000)],
    ['9'.repeat(100_000)],
    ['1e999\n'],
    ['-0'],
  ];
}

function noise(pick: Pick): Uint8Array<ArrayBuffer> {
  // Among them at least one that stands in no JSON outside of words, and is no whole character inside.
  return Uint8Array.from([0xc0, ...Array.from({ length: 1 + pick.below(40) }, () => pick.below(256))]);
}

export function fileOf(lines: readonly string[]): Blob {
  return new Blob([textOf(lines)]);
}

function textOf(lines: readonly string[]): string {
  return lines.map((line) => `${line}\n`).join('');
}

function bytesOf(lines: readonly string[]): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(textOf(lines));
}
