/**
 * SHA-256 (FIPS 180-4), for a page that came over plain http: the browser's own, `crypto.subtle`, is missing there, and a
 * backup could be neither written nor read. In one go, so that it can also be taken inside a transaction. About 5 kB of
 * library would say the same; tests hold this one against NIST's examples and against the browser's own.
 */
export function sha256(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const sum = Uint32Array.from(startValues);
  const words = new Uint32Array(64);
  const padded = withPadding(bytes);
  for (let at = 0; at < padded.byteLength; at += BLOCK_BYTES) addBlock(sum, words, padded, at);
  const out = new DataView(new ArrayBuffer(32));
  sum.forEach((word, index) => out.setUint32(index * 4, word));
  return new Uint8Array(out.buffer);
}

const BLOCK_BYTES = 64;

/** A one bit, zeros, and the length in bits at the end of the last block (5.1.1). */
function withPadding(bytes: Uint8Array): DataView {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / BLOCK_BYTES) * BLOCK_BYTES);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length << 3);
  return view;
}

/** One block (6.2.2); the names of the eight letters are the standard's. */
function addBlock(sum: Uint32Array, words: Uint32Array, block: DataView, at: number): void {
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = sum;
  for (let t = 0; t < 64; t += 1) {
    words[t] = t < 16 ? block.getUint32(at + t * 4) : nextWord(words, t);
    const one =
      h +
      (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) +
      ((e & f) ^ (~e & g)) +
      (roundValues[t] ?? 0) +
      (words[t] ?? 0);
    const two = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = (d + one) | 0;
    d = c;
    c = b;
    b = a;
    a = (one + two) | 0;
  }
  // A typed array keeps the 32 bits that count.
  [a, b, c, d, e, f, g, h].forEach((word, index) => (sum[index] = (sum[index] ?? 0) + word));
}

function nextWord(words: Uint32Array, t: number): number {
  const [early = 0, late = 0] = [words[t - 15], words[t - 2]];
  return (
    (words[t - 16] ?? 0) +
    (turned(early, 7) ^ turned(early, 18) ^ (early >>> 3)) +
    (words[t - 7] ?? 0) +
    (turned(late, 17) ^ turned(late, 19) ^ (late >>> 10))
  );
}

/** A 32-bit word turned to the right. */
function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

const primes = firstPrimes(64);
/** The first 32 bits behind the point of the square roots of the first 8 primes (5.3.3), of the cube roots of 64 (4.2.2). */
const startValues = primes.slice(0, 8).map((prime) => behindThePoint(Math.sqrt(prime)));
const roundValues = Uint32Array.from(primes, (prime) => behindThePoint(Math.cbrt(prime)));

function behindThePoint(root: number): number {
  return Math.floor((root % 1) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const found: number[] = [];
  for (let number = 2; found.length < count; number += 1)
    if (found.every((prime) => number % prime > 0)) found.push(number);
  return found;
}
