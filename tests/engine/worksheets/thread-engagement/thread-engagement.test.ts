import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  floatMm,
  isLess,
  lengthOf,
  minus,
  plus,
  sameLength,
  times,
} from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import {
  sayEngagement,
  sayEngagementRefusal,
  sayEngagementShare,
  sayForce,
} from '../../../../src/engine/worksheets/thread-engagement/say-engagement.ts';
import { boltGrades } from '../../../../src/engine/thread/tables/bolt-grades.ts';
import { parentMetals } from '../../../../src/engine/thread/tables/parent-metals.ts';
import {
  threadEngagement,
  type EngagementAnswer,
  type EngagementQuestion,
} from '../../../../src/engine/worksheets/thread-engagement/thread-engagement.ts';
import { allThreads, hasInserts, threadNamed } from '../../../../src/engine/thread/threads.ts';

function named(designation: string) {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

function answered(question: EngagementQuestion): EngagementAnswer {
  const result = threadEngagement(question);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

function engagedOf(question: EngagementQuestion): NonNullable<EngagementAnswer['engaged']> {
  const { engaged } = answered(question);
  if (!engaged) throw new Error('nothing engaged');
  return engaged;
}

const bolt: EngagementQuestion = {
  thread: named('1/2-13'),
  grade: 'sae-5',
  parentTensileMpa: 205,
  withInsert: false,
};

describe('the least engagement', () => {
  // At .14190 in² · 153 ksi = 21 711 lbf; part π · .4876 (1/2 + .57735 · 13 · (.4876 − .4565)) = 1.1235 in²/in, shears at
  // half of 205 MPa = 14.866 ksi: 16 703 lbf an inch; 21 711 / 16 703 = 1.300 in. Worked by hand from printed limits.
  test('of a 1/2-13 grade 5 bolt in cast aluminium is 1.300 in', () => {
    expect(Number(decimalText(answered(bolt).least.parent, 'in', 3))).toBeCloseTo(1.3, 2);
    expect(answered(bolt).breaksAtMostN / 4.448222).toBeCloseTo(21711, -1);
  });

  test('for the bolt’s own thread is WE29’s .1728 in for 1/4-20, whatever the grade', () => {
    for (const { id } of boltGrades) {
      const { least } = answered({ ...bolt, thread: named('1/4-20'), grade: id, parentTensileMpa: 5000 });
      // The example puts At in as .0318 in place of .031823: .1728 · 1.0007
      expect(Number(decimalText(least.bolt, 'in', 4))).toBeCloseTo(0.173, 4);
      expect(sameLength(least.both, least.bolt)).toBe(true);
    }
  });

  test('counts the bolt’s greatest strength: a grade 8 bolt needs 177/153 of what a grade 5 does', () => {
    const [five, eight] = (['sae-5', 'sae-8'] as const).map((grade) =>
      floatMm(answered({ ...bolt, grade }).least.parent),
    );
    expect((eight ?? 0) / (five ?? 1)).toBeCloseTo(177 / 153, 5);
  });

  test('is less with an insert, as the part is held at the insert’s larger hole', () => {
    const plain = answered(bolt).least.parent;
    const insert = answered({ ...bolt, withInsert: true }).least.parent;
    expect(isLess(insert, plain)).toBe(true);
  });

  test('never grows when the part gets stronger, and never shrinks when the bolt does', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...allThreads),
        fc.integer({ min: 50, max: 1500 }),
        fc.integer({ min: 1, max: 500 }),
        (thread, parentTensileMpa, more) => {
          const weak = answered({ ...bolt, thread, parentTensileMpa }).least;
          const strong = answered({ ...bolt, thread, parentTensileMpa: parentTensileMpa + more }).least;
          const harder = answered({ ...bolt, thread, parentTensileMpa, grade: '12.9' }).least;
          expect(isLess(weak.both, strong.both)).toBe(false);
          expect(isLess(harder.both, weak.both)).toBe(false);
        },
      ),
    );
  });
});

describe('what is engaged', () => {
  const least = answered(bolt).least.both;
  const oneStep = lengthOf('.00001 mm');
  const exactly = (length: typeof least) => engagedOf({ ...bolt, engaged: typedEstimate(length) });

  test('exactly the least is enough, one step less is not', () => {
    expect(exactly(least).verdict.kind).toBe('good');
    expect(exactly(minus(least, oneStep)).verdict).toMatchObject({ kind: 'no-good', way: 'under' });
  });

  test('twice the least holds twice what breaks the bolt', () => {
    const engaged = exactly(times(least, 2));
    expect(engaged.timesTheBolt).toBeCloseTo(2, 6);
    expect(engaged.first).toBe('bolt');
  });

  test('a part softer than the bolt strips before the bolt’s thread does, and the other way round', () => {
    const half = typedEstimate(lengthOf('.1 in'));
    expect(engagedOf({ ...bolt, engaged: half }).first).toBe('parent-threads');
    expect(engagedOf({ ...bolt, engaged: half, parentTensileMpa: 1500 }).first).toBe('bolt-threads');
  });

  test('measured with a rule near the least is too close to call', () => {
    const rule = usualTools.find((tool) => tool.id === 'steel-rule');
    const engaged = engagedOf({ ...bolt, engaged: typedEstimate(plus(least, lengthOf('.001 in')), rule) });
    expect(engaged.verdict.kind).toBe('too-close');
    expect(sayEngagement(answered({ ...bolt, engaged: typedEstimate(least, rule) }), 'in')).toMatch(
      /^Too close to call: 1\.(30|29)\d* ±\.0\d+ engaged/,
    );
  });

  test('of an insert is ¾ of a pitch less than its nominal length', () => {
    const thread = named('M8');
    const { length } = engagedOf({
      ...bolt,
      thread,
      withInsert: true,
      engaged: typedEstimate(lengthOf('12 mm')),
    });
    // 12 − 0.75 · 1.25
    expect(sameLength(length, lengthOf('11.0625 mm'))).toBe(true);
  });

  test('of nothing, or of an insert shorter than it loses, is refused', () => {
    expect(threadEngagement({ ...bolt, engaged: typedEstimate(lengthOf('0 in')) })).toEqual({
      ok: false,
      refusal: { code: 'nothing-engaged' },
    });
    const short = typedEstimate(times(bolt.thread.pitch, '0.75'));
    expect(threadEngagement({ ...bolt, withInsert: true, engaged: short }).ok).toBe(false);
    expect(threadEngagement({ ...bolt, withInsert: false, engaged: short }).ok).toBe(true);
  });

  test('no insert is looked for where none is made', () => {
    const result = threadEngagement({ ...bolt, thread: named('1/4-32 UNEF'), withInsert: true });
    expect(result.ok ? '' : sayEngagementRefusal(result.refusal)).toBe(
      'No wire insert is usually made for 1/4-32 UNEF. Leave the insert out, or take another thread.',
    );
    expect(sayEngagementRefusal({ code: 'nothing-engaged' })).toMatch(/how deep the bolt goes in/);
  });

  test('every thread, with an insert where one is made, every grade and every metal gives an answer', () => {
    const threads = allThreads.flatMap((thread) =>
      (hasInserts(thread) ? [false, true] : [false]).map((withInsert) => ({ thread, withInsert })),
    );
    const strengths = boltGrades.flatMap(({ id }) =>
      parentMetals.map(({ tensileLeastMpa }) => ({ grade: id, parentTensileMpa: tensileLeastMpa })),
    );
    for (const more of [...threads, ...strengths])
      expect(floatMm(answered({ ...bolt, ...more }).least.both)).toBeGreaterThan(0);
  });
});

describe('said to the fitter', () => {
  const said = (engaged: string, more: Partial<EngagementQuestion> = {}) =>
    sayEngagement(answered({ ...bolt, ...more, engaged: typedEstimate(lengthOf(engaged)) }), 'in');

  test('the bolt breaks first, or which thread strips first', () => {
    expect(said('1.5 in')).toMatch(
      /^Good: 1\.500 engaged, 1\.(30|29)\d* in is enough\. The bolt breaks before either thread strips\.$/,
    );
    expect(said('1 in')).toMatch(
      /^No good: 1\.000 engaged, want 1\.(30|29)\d* in\. The part’s thread strips first\.$/,
    );
    expect(said('.1 in', { parentTensileMpa: 1500 })).toMatch(
      /^No good: .* The bolt’s thread strips first\.$/,
    );
    expect(sayEngagement(answered(bolt), 'in')).toMatch(
      /^1\.(30|29)\d* in of full thread makes the bolt break/,
    );
  });

  test('by how much', () => {
    expect(sayEngagementShare(answered({ ...bolt, engaged: typedEstimate(lengthOf('2.6 in')) }))).toMatch(
      /holds (2\.00|1\.99) times/,
    );
    expect(sayEngagementShare(answered({ ...bolt, engaged: typedEstimate(lengthOf('.65 in')) }))).toMatch(
      /holds only 0\.50 of/,
    );
    expect(sayEngagementShare(answered(bolt))).toBe('');
    const { engaged, ...rest } = answered({ ...bolt, engaged: typedEstimate(lengthOf('.65 in')) });
    if (!engaged) throw new Error('engaged was given');
    // .996 rounded would be a thread that holds
    expect(sayEngagementShare({ ...rest, engaged: { ...engaged, timesTheBolt: 0.996 } })).toMatch(
      /only 0\.99 of/,
    );
  });

  test('forces stand in both units, small ones in newtons', () => {
    expect(sayForce(111205.55)).toBe('25,000 lbf (111.2 kN)');
    // .1 N·m on M12 dry: 100 / (.2 · 12) = 41.7 N, 41.7 / 4.448 = 9.4 lbf
    expect(sayForce(41.7)).toBe('9 lbf (42 N)');
  });
});
