import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { holeAndPinWorksheet } from '../../../../src/engine/worksheets/hole-and-pin/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

type Given = Parameters<typeof worksheetOf>[1];

/** A hole of .4545 on a 7/16-20 bolt whose shank is .4365: the slop is .018, and .002 is the most (common practice). */
function bolt({ sizes, choices, unit }: NonNullable<Given> = {}) {
  const given = givenOf(
    worksheetOf('hole-and-pin', {
      sizes: { bore: typedSize('.4545'), pin: typedSize('.4365'), ...sizes },
      choices: { thread: '7/16-20 UNF', ...choices },
      ...(unit && { unit }),
    }),
  );
  const account = holeAndPinWorksheet.account(given);
  const ways = blocksOf(account, 'way');
  return {
    account,
    ways,
    ask: blocksOf(account, 'ask')[0],
    verdict: blocksOf(account, 'verdict')[0],
    way: (title: RegExp) => ways.find((way) => title.test(way.title)),
  };
}

const told = {
  shankPasses: 'no',
  facesCarry: 'yes',
  partMetal: 'low-carbon-steel',
  bushingMetal: 'bearing-bronze',
};

describe('a worn hole on its bolt', () => {
  test('is judged in one line, by the most alone where the least is nothing', () => {
    expect(bolt().verdict).toMatchObject({
      kind: 'no-good',
      headline: 'Too loose: slop .018, want .002 or less.',
    });
  });

  test('has its ways by rank, each with what to drill, ream or tap', () => {
    const { ways, way } = bolt({ choices: told, sizes: { wall: typedSize('.500') } });
    expect(ways.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    // .4545 lies over the insert's least minor of .4483: no drill. Thread left: (.50245 − .4545) / (.50245 − .43748) = 73.8 %.
    expect(way(/^Thread insert/)?.detail).toBe(
      'STI tap 7/16-20 UNF. No drill: the hole is to size, 73 % thread.',
    );
    // 1/2 located 0 to .002; the reamers in it are .5000 and .5010, the middle is .5010.
    expect(way(/^1\/2 bolt/)?.detail).toBe('Ream .501. Open the parts it joins too.');
    // Inside .4365 to .4385 and two walls of .060: .5585; 9/16 = .5625.
    expect(way(/^Bushing, 9\/16 outside/)?.detail).toMatch(
      /^Ream 9\/16 \(\.5625\), press in, finish \.43\d+\.$/,
    );
  });

  test('has what is ruled out last, in short and with its reason', () => {
    const { ways, way } = bolt();
    const stands = ways.map((one) => one.stands);
    expect(stands.indexOf('out')).toBe(stands.lastIndexOf('asks') + 1);
    expect(way(/^Sleeve/)).toMatchObject({ stands: 'out', detail: 'Not on a bolt that its nut clamps.' });
    expect(ways.at(-1)).toMatchObject({ title: 'Leave it as it is', stands: 'out' });
  });

  test('is asked first how much wall there is, with what each way needs of it', () => {
    const { ask, way } = bolt();
    // .4375 / 2 = .21875, half of 1/2 + .002 = .251, half of 9/16 = .28125: never shown less than they are.
    expect(ask).toMatchObject({
      field: 'wall',
      key: 'Give the wall',
      sentence: 'how much wall at the thinnest side? 1 needs .219, 2 needs .251, 3 needs .282 left.',
    });
    expect(way(/^Thread insert/)?.detail).toMatch(/Shank and faces still to say\.$/);
  });

  test('is asked the next thing that its best way hangs on, and nothing once that can be gone', () => {
    const wall = { wall: typedSize('.500') };
    expect(bolt({ sizes: wall }).ask?.field).toBe('shankPasses');
    expect(bolt({ sizes: wall, choices: { shankPasses: 'no' } }).ask?.field).toBe('facesCarry');
    expect(bolt({ sizes: wall, choices: told }).ask).toBeUndefined();
  });

  test('whose part has no wall for a way rules it out with both figures', () => {
    const { way } = bolt({ choices: told, sizes: { wall: typedSize('.260') } });
    // 9/16: .260 − (.5625 − .4545)/2 = .206, half of 9/16 has to stay.
    expect(way(/^Bushing/)).toMatchObject({
      stands: 'out',
      detail: 'Too little metal: wall .206, least .2813.',
    });
  });

  test('in a metric shop is opened and reamed in millimetres first', () => {
    const { way } = bolt({ unit: 'mm', choices: told, sizes: { wall: typedSize('.500') } });
    expect(way(/^M12 bolt/)?.detail).toMatch(/^Ream 12\.00 mm\./);
    expect(way(/^Bushing, 15 mm outside/)?.detail).toMatch(/^Ream 15\.00 mm, press in, finish 11\.\d+ mm\.$/);
    expect(way(/^Thread insert/)?.detail).toMatch(/^STI tap 7\/16-20 UNF\./);
  });

  test('says on the page nothing longer than fourteen words, save what the readings prove', () => {
    const { account, ways, ask } = bolt({ choices: told });
    const sentences = [
      ...ways.map(({ detail }) => detail),
      ask?.sentence ?? '',
      ...blocksOf(account, 'said').map(({ sentence }) => sentence),
    ].flatMap((text) => text.split(/(?<=[.?]) (?=[A-Z1])/));
    expect(sentences.filter((sentence) => sentence.split(' ').length > 14)).toEqual([]);
    expect(sentences.join(' ')).not.toMatch(/common practice|source|from memory/);
  });

  test('keeps every reason, what each way gives back and every source under Why', () => {
    const why = blocksOf(bolt().account, 'why').flatMap(({ lines }) => lines);
    const words = why.map(({ what, how, source = '' }) => `${what}: ${how} ${source}`).join(' ');
    expect(words).toMatch(/half the hole's diameter, common practice, no source/);
    expect(words).toMatch(/gives back no metal/);
    expect(words).toMatch(/A plain tap of that name ruins the hole/);
    expect(words).toMatch(/ISO 14253-1/);
    expect(words).toMatch(/A bolt that its nut clamps gets no sleeve/);
  });
});

describe('a joint that fits', () => {
  test('has no way to choose from and asks for nothing', () => {
    const by = tool('micrometer-0-1');
    const { verdict, ways, ask } = bolt({
      sizes: { bore: typedSize('.4375', tool('dial-bore-gauge')), pin: typedSize('.4365', by) },
    });
    expect(verdict?.kind).toBe('good');
    expect([ways, ask]).toEqual([[], undefined]);
  });
});

describe('a joint that nobody can call', () => {
  test('is to be measured closer before anything is cut', () => {
    // .4380 − .4365 = .0015 of .002, by a caliper that knows a bore to ±.0022.
    const { verdict, ask, ways } = bolt({
      sizes: { bore: typedSize('.4380', tool('digital-caliper-inside')) },
    });
    expect(verdict?.kind).toBe('too-close');
    expect(ask).toMatchObject({ field: 'bore', key: 'Measure closer' });
    expect(ways[0]).toMatchObject({ title: 'Leave it as it is', stands: 'asks' });
  });
});

describe('a bore that is too tight', () => {
  test('is opened for the pin that is there, before all else', () => {
    // Pin .4372: .4372 to .4392; reamers .4375 and .4385, the middle is .4382.
    const { verdict, ways, ask } = bolt({ sizes: { bore: typedSize('.4360'), pin: typedSize('.4372') } });
    expect(verdict).toMatchObject({
      kind: 'no-good',
      headline: 'Too tight: clearance −.0012, want 0 to .002.',
    });
    expect(ways[0]).toMatchObject({
      title: 'Open the bore',
      detail: 'Ream .4385. Then the pin that is there fits.',
      stands: 'open',
      goes: 'open-bore',
    });
    expect(ask).toBeUndefined();
  });
});

describe('the arm', () => {
  const arm = { boreLength: typedSize('2'), reach: typedSize('12') };
  const said = (sizes: NonNullable<Given>['sizes']) =>
    blocksOf(bolt({ sizes: { ...arm, ...sizes } }).account, 'said').map(({ sentence }) => sentence);

  test('rocks by slop · reach / length each way', () => {
    // .018 · 12 / 2 = .108
    expect(said({})).toContain("At the arm's end it rocks ±.108 in, in all .216 in.");
  });

  test('whose rock was read says so, and its figure counts', () => {
    // .0480 / 2 · 2 / 12 = .004
    const { verdict } = bolt({ sizes: { ...arm, rockInAll: typedSize('.048') } });
    expect(verdict?.headline).toBe('Too loose: slop .004, want .002 or less.');
    expect(said({ rockInAll: typedSize('.048') })).toContain(
      'From the rock read at the arm’s end; it counts before bore less pin.',
    );
  });
});
