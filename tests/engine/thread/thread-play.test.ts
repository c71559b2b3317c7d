import { expect, test } from 'vitest';
import { floatMm } from '../../../src/engine/length/length.ts';
import { threadPlay } from '../../../src/engine/thread/thread-play.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';

// Pitch diameters, largest hole less smallest bolt and smallest hole less largest bolt; printed limits from memory of
// ASME B1.1 (2A, 2B) and ISO 965 (6g, 6H). Inch rows may differ by their own rounding, .0003 in.
test.each([
  { thread: '1/4-20', most: 0.2224 - 0.2127, least: 0.2175 - 0.2164, mmPer: 25.4 },
  { thread: '7/16-20', most: 0.4104 - 0.3995, least: 0.405 - 0.4037, mmPer: 25.4 },
  { thread: '1/2-13', most: 0.4565 - 0.4435, least: 0.45 - 0.4485, mmPer: 25.4 },
  { thread: 'M8', most: 7.348 - 7.042, least: 7.188 - 7.16, mmPer: 1 },
  { thread: 'M12', most: 11.063 - 10.679, least: 10.863 - 10.829, mmPer: 1 },
])('a bolt in a $thread thread shifts by the difference of the printed pitch diameters', (row) => {
  const thread = threadNamed(row.thread);
  const play = thread && threadPlay(thread);
  expect(play && Math.abs(floatMm(play.most) - row.most * row.mmPer)).toBeLessThan(0.009);
  expect(play && Math.abs(floatMm(play.least) - row.least * row.mmPer)).toBeLessThan(0.003);
});
