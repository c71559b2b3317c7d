import type { Kind } from './hostile-files.ts';
import { lineIn, resealed } from './hostile-lines.ts';

/** What stands around the records, and in pictures and signed sheets; checksum and counts are right. */
export const hostileForms = {
  async 'a signed sheet that is removed'(whole, pick) {
    const at = lineIn(whole, 'sheets', pick);
    const text = (whole[at] ?? '').replace('"record":{', '"record":{"deleted":"001900000000000-0000-other",');
    return resealed(whole, new Map([[at, text]]), 'refused');
  },
  async 'a signed sheet that runs or fetches'(whole, pick) {
    const nodes = [
      { tag: 'script', attributes: {}, children: ['alert(1)'] },
      { tag: 'img', attributes: { src: 'x', onerror: 'alert(1)' }, children: [] },
      { tag: 'p', attributes: { onclick: 'alert(1)' }, children: [] },
      { tag: 'a', attributes: { href: 'javascript:alert(1)' }, children: ['x'] },
      { tag: 'use', attributes: { href: 'http://127.0.0.1:9/x.svg#a' }, children: [] },
      { tag: 'p', attributes: { style: 'background:url(http://127.0.0.1:9/)' }, children: [] },
      { tag: 'p', attributes: { dangerouslySetInnerHTML: '<b>' }, children: [] },
      { tag: 'iframe', attributes: { srcdoc: '<b>' }, children: [] },
      { tag: 'foreignObject', attributes: {}, children: [] },
      { tag: 'P', attributes: {}, children: [] },
      { tag: ['p'], attributes: {}, children: [] },
      { tag: 'p', attributes: {}, children: { length: 1 } },
      7,
      null,
    ];
    const at = lineIn(whole, 'sheets', pick);
    const text = (whole[at] ?? '').replace(
      '"content":[',
      () => `"content":[${JSON.stringify(pick.oneOf<unknown>(nodes))},`,
    );
    return resealed(whole, new Map([[at, text]]), 'refused');
  },
  async 'a picture that is no picture'(whole, pick) {
    const at = lineIn(whole, pick.oneOf(['photos', 'photoBytes']), pick);
    const wrong = ['!!!!', 'A', 'AAA', '====', '', 'AAAA=', 'é', '%41', 'AA AA*', '\\u0000'];
    const text = (whole[at] ?? '').replace(
      /"(preview|bytes)":"[^"]*"/,
      (_found, field: string) => `"${field}":"${pick.oneOf(wrong)}"`,
    );
    return resealed(whole, new Map([[at, text]]), 'either');
  },
  async 'a picture of a kind that can run'(whole, pick) {
    const at = lineIn(whole, 'photos', pick);
    const mime = pick.oneOf([
      'image/svg+xml',
      'text/html',
      'image/png\\nX: y',
      'IMAGE/JPEG',
      'image/jpeg;x',
      '',
    ]);
    return resealed(whole, new Map([[at, (whole[at] ?? '').replace('image/jpeg', () => mime)]]), 'refused');
  },
  async 'another form, or none'(whole, pick) {
    const forms = ['0', '1', '2', '3', '4', '99', '-1', '2.5', '1e999', '"2"', 'null', '[2]', 'true'];
    const form = pick.oneOf(forms);
    const text = (whole[0] ?? '').replace(/"version":\d+/, () => `"version":${form}`);
    // Of so few and short lines the sum is the same in the second form.
    const expects = form === '2' || form === '3' ? 'imported' : form === '1' ? 'either' : 'refused';
    return resealed(whole, new Map([[0, text]]), expects);
  },
  async 'a first line that says odd things'(whole, pick) {
    const odd = [
      '"writtenAt":8.1e15', '"writtenAt":-1', '"writtenAt":"now"', '"phone":5', '"phone":"<b>"', '"fitter":"\\u202e<img>"',
      '"job":"nowhere"', '"job":["x"]', '"seen":5', '"seen":{"*":"x"}', '"seen":{"*":["x"]}', '"seen":{"*":[null]}',
      '"seen":{"*":["007999999999999-ffff-zzzz"]}', `"seen":{"*":[${'"001700000000000-0000-x",'.repeat(300)}"x"]}`,
      `"seen":{"${'j'.repeat(200)}":[]}`, '"seen":{"":["001700000000000-0000-x"]}', '"fitter":{"toString":1}',
    ]; // prettier-ignore
    const text = (whole[0] ?? '').replace(/\}$/, () => `,${pick.oneOf(odd)}}`);
    return resealed(whole, new Map([[0, text]]), 'imported');
  },
  async 'a first line with a number beyond all bounds'(whole) {
    const text = (whole[0] ?? '').replace(/\}$/, () => ',"writtenAt":1e999}');
    return resealed(whole, new Map([[0, text]]), 'refused');
  },
  async 'counts that are wrong'(whole, pick) {
    const counts = ['-1', '0.5', '1e999', '"3"', 'null', '{}', '99999'];
    const name = pick.oneOf(['jobs', 'readings', 'cuts', 'photos']);
    const text = (whole[0] ?? '').replace(
      new RegExp(`"${name}":\\d+`),
      () => `"${name}":${pick.oneOf(counts)}`,
    );
    return resealed(whole, new Map([[0, text]]), 'refused');
  },
  async 'a line of a kind that there isn’t'(whole, pick) {
    const odd = [
      '{"store":"drafts","record":{"id":"x"}}', '{"store":"undo","record":{"id":"x"}}', '{"store":"device","record":{"id":"clock"}}',
      '{"store":"staging","record":{"id":"file"}}', '{"store":"brought","record":{"id":"mark"}}', '{"store":"toString","record":{}}',
      '{"store":["jobs"],"record":{"id":"x"}}', '{"store":"jobs"}', '{"store":"jobs","record":[]}', '{"store":"jobs","record":null}',
      '{"record":{"id":"x"}}', '{}', '[]', '5', '"jobs"', '{"unreadable":"nowhere","record":{"id":"x"}}', '{"unreadable":"jobs","record":5}',
    ]; // prettier-ignore
    const at = 1 + pick.below(whole.length - 2);
    return resealed([...whole.slice(0, at), pick.oneOf(odd), ...whole.slice(at)], new Map(), 'refused');
  },
  async 'records in another order'(whole, pick) {
    const lines = whole.slice(1, -1);
    for (let at = lines.length - 1; at > 0; at -= 1) {
      const other = pick.below(at + 1);
      [lines[at], lines[other]] = [lines[other] ?? '', lines[at] ?? ''];
    }
    return resealed([whole[0] ?? '', ...lines, whole.at(-1) ?? ''], new Map(), 'imported');
  },
  async 'nothing wrong with it'(whole) {
    return { file: new Blob(whole.map((line) => `${line}\n`)), expects: 'imported' };
  },
} satisfies Readonly<Record<string, Kind>>;
