import { expect, test } from 'vitest';
import { worksheets, type WorksheetKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

// Metal that is off can't be put back on: while the verdict can't be called, each way that takes some says that it isn't sure.

const caliper = tool('digital-caliper');
const ways = (kind: WorksheetKind, data: WorksheetData) => {
  const given = givenOf(data);
  const { verdict, cuts } = worksheets[kind];
  return { found: verdict(given).found, unsure: cuts(given).map(({ unsure }) => unsure === true) };
};

test('a bore that may be good as it is: reaming it for a larger pin is not sure', () => {
  // .5040 − .5000 = .0040, want .001 to .003; two calipers know it to more than the .001 between
  const data = worksheetOf('hole-and-pin', {
    sizes: {
      bore: typedSize('.5040', tool('digital-caliper-inside')),
      pin: typedSize('.5000', caliper),
      wall: typedSize('.500'),
    },
    choices: { joint: 'turns', pinSkin: 'soft', axis: 'follows' },
  });
  const { found, unsure } = ways('hole-and-pin', data);
  expect(found).toBe('too-close');
  expect(unsure.length).toBeGreaterThan(0);
  expect(new Set(unsure)).toEqual(new Set([true]));
});

test('a bore that is surely worn is cut by any way that asks for nothing', () => {
  const data = worksheetOf('hole-and-pin', {
    sizes: { bore: typedSize('.5200'), pin: typedSize('.5000'), wall: typedSize('.500') },
    choices: { joint: 'turns', pinSkin: 'soft', axis: 'follows' },
  });
  const { found, unsure } = ways('hole-and-pin', data);
  expect(found).toBe('no-good');
  expect(unsure).toContain(false);
});

test('a blind hole in metal of which nobody said how thick it is: the drill may come through', () => {
  const data = worksheetOf('thread-insert', {
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'blind', wallIs: 'far' },
  });
  expect(ways('thread-insert', data)).toEqual({ found: 'too-close', unsure: [true] });
});

test('a hole too close to the least is drilled through anyway: that is sure, and not sure in a floor nobody knows', () => {
  // .4500 lies a hair under the least minor diameter of 7/16-20 STI, closer than a caliper can tell.
  const least = typedSize('.4480', tool('digital-caliper-inside'));
  const through = worksheetOf('thread-insert', {
    sizes: { hole: least, thickness: typedSize('.750') },
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'through', wallIs: 'far', legs: 'all' },
  });
  expect(ways('thread-insert', through)).toEqual({ found: 'too-close', unsure: [false] });
  const blind = worksheetOf('thread-insert', {
    sizes: { hole: least },
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'blind', wallIs: 'far' },
  });
  expect(ways('thread-insert', blind)).toEqual({ found: 'too-close', unsure: [true] });
});

test('a ring whose clearance the readings can’t prove', () => {
  const data = worksheetOf('ring', {
    sizes: { recess: typedSize('1.500', tool('tape-measure')), stem: typedSize('.750') },
  });
  expect(ways('ring', data)).toEqual({ found: 'too-close', unsure: [true] });
});

test('a stack right at its limit is trimmed for sure where the cut itself is proved', () => {
  // .968 − .960 = .008, want .008 to .012, known to ±.0002: faced .002 it is .010 whichever way that turns out
  const micrometer = tool('micrometer-0-1');
  const data = worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize('.968', micrometer) },
    parts: {
      a: { name: 'spacer', order: 1, count: 1, adjustable: true, size: typedSize('.960', micrometer) },
    },
  });
  expect(ways('spacer-stack', data)).toEqual({ found: 'too-close', unsure: [false] });
});
