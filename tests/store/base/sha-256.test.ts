import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sha256 } from '../../../src/store/base/sha-256.ts';

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');
const bytesOf = (text: string) => new TextEncoder().encode(text);

// NIST, "Example Values" for SHA-256 (FIPS 180-4): one block, two blocks; the empty text and the million a's are of the
// same set. From memory, and the browser's own sum of each is the same, which the next test asks.
const examples = [
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu',
    'cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1',
  ],
  ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
] as const;

test.each(examples.map(([text, sum]) => [text.slice(0, 60), text, sum] as const))(
  'the sum of “%s” is the published one',
  (_name, text, sum) => {
    expect(hex(sha256(bytesOf(text)))).toBe(sum);
  },
);

test('of any bytes, around every end of a block, it is what the browser’s own says', async () => {
  const some = fc.uint8Array({ maxLength: 300 });
  await fc.assert(
    fc.asyncProperty(some, async (bytes) => {
      expect(hex(sha256(bytes))).toBe(hex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))));
    }),
  );
  for (let length = 0; length <= 130; length += 1) {
    const bytes = new Uint8Array(length).fill(length);
    const own = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    expect(hex(sha256(bytes))).toBe(hex(own));
  }
});
