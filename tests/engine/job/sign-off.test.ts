import { describe, expect, test } from 'vitest';
import type { CheckFound } from '../../../src/engine/reading/check.ts';
import { sayFinding, sayHours, saySignOff } from '../../../src/engine/job/say-sign-off.ts';
import { curedAt } from '../../../src/engine/job/locker-cure.ts';
import { isReason, signOff } from '../../../src/engine/job/sign-off.ts';
import type { FindingCode } from '../../../src/engine/job/finding.ts';
import type { SignOffQuestion } from '../../../src/engine/job/sign-off-question.ts';
import type { System } from '../../../src/engine/job/safety.ts';

const HOUR = 3_600_000;
const noon = 1_790_000_000_000;

/** A brake job on which nothing is left to do. */
const ready: SignOffQuestion = {
  systems: ['brake'],
  now: noon,
  steps: [
    {
      id: 's1',
      text: 'Fit the spacer, nut torqued',
      doneAt: noon - HOUR,
      torque: { typed: '45', source: 'manual, p. 12' },
    },
  ],
  parts: [{ id: 'p1', name: 'Spacer', isMockUp: false }],
  checks: [{ id: 'c1', name: 'Float', found: 'good', older: false }],
  unchecked: [],
  cuts: [{ id: 'k1', name: 'Spacer, faced', state: 'to-size', older: false }],
  lacksOdometer: false,
};
const codes = (found: readonly { readonly code: FindingCode }[]) => found.map(({ code }) => code);
const stops = (changes: Partial<SignOffQuestion>) => codes(signOff({ ...ready, ...changes }).blockers);
const warns = (changes: Partial<SignOffQuestion>) => codes(signOff({ ...ready, ...changes }).warnings);
const torque = { typed: '45', source: 'manual, p. 12' } as const;
const step = { id: 's1', text: 'Fit the spacer', torque };

describe('a brake job', () => {
  test('with every step done, every check good, every cut to size and no mock-up can be signed', () => {
    const answer = signOff(ready);
    expect(answer).toEqual({ safetyCritical: true, blockers: [], standing: [], warnings: [] });
    expect(saySignOff(answer)).toBe('Nothing stands in the way of signing.');
  });

  test.each<{ found: CheckFound; code: FindingCode }>([
    { found: 'not-done', code: 'check-not-done' },
    { found: 'no-good', code: 'check-failed' },
    { found: 'too-close', code: 'check-too-close' },
  ])('can’t be signed with a check that is $found', ({ found, code }) => {
    const answer = signOff({ ...ready, checks: [{ id: 'c1', name: 'Float', found, older: false }] });
    expect(answer.blockers).toEqual([
      { code, key: `${code} c1`, as: '', name: 'Float', place: { at: 'check', id: 'c1' } },
    ]);
    expect(saySignOff(answer)).toBe('One thing stands in the way of signing.');
  });

  test('can’t be signed without any check', () => {
    expect(stops({ checks: [] })).toEqual(['no-check']);
  });

  test('can’t be signed while a worksheet’s own check was never made, and that is said once', () => {
    expect(stops({ checks: [], unchecked: [{ title: 'Bracket float', used: true }] })).toEqual([
      'check-missing',
    ]);
  });

  test('is only warned of a worksheet that nothing was cut or assembled by', () => {
    const unchecked = [{ title: 'Bushing instead', used: false }];
    expect(stops({ unchecked })).toEqual([]);
    expect(warns({ unchecked })).toEqual(['check-offered']);
    expect(stops({ unchecked, checks: [] })).toEqual(['no-check']);
  });

  test.each(['to-cut', 'cutting', 'over'] as const)('can’t be signed with a cut that is %s', (state) => {
    expect(stops({ cuts: [{ id: 'k1', name: 'Spacer', state, older: false }] })).toEqual([
      state === 'over' ? 'cut-over' : 'cut-open',
    ]);
  });

  test('can be signed with a cut that was made again, and not with one that was only scrapped', () => {
    expect(warns({ cuts: [{ id: 'k1', name: 'Spacer', state: 'made-again', older: true }] })).toEqual([]);
    expect(stops({ cuts: [{ id: 'k1', name: 'Spacer', state: 'made-again', older: true }] })).toEqual([]);
    expect(stops({ cuts: [{ id: 'k1', name: 'Spacer', state: 'scrapped', older: true }] })).toEqual([
      'cut-scrapped',
    ]);
  });

  test('can’t be signed with figures older than their sizes, nor with a check read before a size changed', () => {
    const changes = {
      checks: [{ id: 'c1', name: 'Float', found: 'good', older: true, readBefore: true }],
      cuts: [{ id: 'k1', name: 'Spacer', state: 'to-size', older: true }],
    } as const;
    expect(stops(changes)).toEqual(['cut-older', 'check-older', 'check-read-before']);
    expect(warns({ ...changes, systems: ['engine'] })).toEqual([
      'cut-older',
      'check-older',
      'check-read-before',
    ]);
  });

  test.each([
    { found: 'no-good', used: false, code: 'worksheet-no-good' },
    { found: 'too-close', used: false, code: 'worksheet-too-close' },
    { found: 'no-answer', used: true, code: 'worksheet-no-answer' },
    { found: 'not-judged', used: false, code: 'worksheet-not-judged' },
    { found: 'not-judged', used: true, code: 'worksheet-not-judged' },
  ] as const)('can’t be signed over a worksheet that is $found', ({ found, used, code }) => {
    const said = 'No good: .525 in engaged of .998 in wanted.';
    const worksheets = [{ id: 'w1', title: 'Caliper bolts', found, said, used }];
    const [blocker] = signOff({ ...ready, worksheets }).blockers;
    expect(blocker).toMatchObject({
      code,
      name: 'Caliper bolts',
      said,
      place: { at: 'worksheet', id: 'w1' },
    });
    expect(warns({ worksheets, systems: ['engine'] })).toEqual([code]);
  });

  test('is told that a worksheet is not judged, and a written reason lets it pass', () => {
    const worksheets = [{ id: 'w1', title: 'Bushing', found: 'not-judged', said: '', used: true }] as const;
    expect(signOff({ ...ready, worksheets }).blockers.map(sayFinding)).toEqual([
      {
        what: 'Bushing: not judged',
        todo: 'Nothing that was measured is held against its limits yet. Give what was measured, or check it.',
      },
    ]);
    const why = 'Bore read at 20.012 after pressing, see the sheet';
    const reasons = { 'worksheet-not-judged w1': { why, as: '' } };
    expect(signOff({ ...ready, worksheets, reasons }).blockers).toEqual([]);
  });

  test('a worksheet that judges nothing itself is proved by all of its checks', () => {
    const worksheets = [
      { id: 'w1', title: 'Taper', found: 'not-judged', said: '', used: true, checked: true },
    ] as const;
    expect(stops({ worksheets })).toEqual([]);
  });

  test('is not stopped by a worksheet that is good, or that nothing came from yet', () => {
    const worksheets = (['good', 'no-answer'] as const).map((found, index) => ({
      id: `w${index}`,
      title: 'Trial',
      found,
      said: '',
      used: false,
    }));
    expect(stops({ worksheets })).toEqual([]);
    expect(warns({ worksheets })).toEqual(['worksheet-unused']);
  });

  test('is told of a good worksheet what nobody said of it, with where to say it, and is not stopped by that', () => {
    const worksheets = [
      {
        id: 'w1',
        title: 'Bracket',
        found: 'good',
        said: 'Good: float .010.',
        used: true,
        assumed: { words: 'float, tool', field: 'want' },
      },
    ] as const;
    for (const systems of [['brake'], ['engine']] as const) {
      const { blockers, warnings } = signOff({ ...ready, systems, worksheets });
      expect(blockers).toEqual([]);
      expect(warnings).toMatchObject([{ code: 'worksheet-assumed', field: 'want' }]);
      expect(warnings.map(sayFinding)).toEqual([
        { what: 'Bracket: good only as assumed', todo: 'Assumed: float, tool. Say what it is.' },
      ]);
    }
  });

  test('is stopped by a worksheet that is good with a size of another part only; another job is told', () => {
    const ofAnother = { words: 'hub sleeve of another one', field: 'fixed' };
    const worksheets = [
      { id: 'w1', title: 'Bracket', found: 'good', said: '', used: true, assumed: ofAnother, ofAnother },
    ] as const;
    expect(stops({ worksheets })).toEqual(['worksheet-of-another']);
    const { blockers, warnings } = signOff({ ...ready, systems: ['engine'], worksheets });
    expect(blockers).toEqual([]);
    expect(warnings.map(sayFinding)).toContainEqual({
      what: 'Bracket: good only with another part’s size',
      todo: 'Read it on this one: hub sleeve of another one.',
    });
  });

  test('can’t be signed with a cut that is to size by a tool too coarse to prove it; another job can', () => {
    const cuts = [
      {
        id: 'k1',
        name: 'Spacer, faced',
        state: 'to-size',
        older: false,
        tooCoarse: { tool: '6 in digital caliper' },
      },
    ] as const;
    const { blockers } = signOff({ ...ready, cuts });
    expect(blockers).toMatchObject([{ code: 'cut-unproved', place: { at: 'cut', id: 'k1' } }]);
    expect(blockers.map(sayFinding)).toEqual([
      {
        what: 'Spacer, faced: measured too coarsely',
        todo: 'The 6 in digital caliper can’t prove its limits. Measure it with a finer one.',
      },
    ]);
    const engine = { systems: ['engine'], cuts } as const;
    expect([stops(engine), warns(engine)]).toEqual([[], []]);
    // A reason lets it stand, as any blocker of a record that can be read.
    const why = 'Tried on its sleeve: it floats, read by feeler';
    expect(signOff({ ...ready, cuts, reasons: { 'cut-unproved k1': { why, as: '' } } }).blockers).toEqual([]);
  });

  test('can’t be signed while no step has a torque, nor with a locker that nobody knows the cure of', () => {
    const { torque: _torque, ...untorqued } = step;
    expect(stops({ steps: [{ ...untorqued, doneAt: noon }] })).toEqual(['no-torque-step']);
    expect(stops({ steps: [{ ...step, doneAt: noon, locker: 'medium' }] })).toEqual(['no-cure-time']);
    expect(stops({ steps: [{ ...step, doneAt: noon, locker: 'medium', cureHours: '0' }] })).toEqual([
      'no-cure-time',
    ]);
  });

  test.each(['', ' ', '0', '0.0', '-'])('has no torque where “%s” is typed for it', (typed) => {
    const steps = [{ ...step, doneAt: noon, torque: { typed, source: 'manual, p. 12' } }];
    expect(stops({ steps })).toEqual(['no-torque-figure']);
  });

  test('is asked again for its reason when another step is there that has no torque either', () => {
    const { torque: _torque, ...untorqued } = step;
    const reasons = { 'no-torque-step': { why: 'Nothing on it is torqued', as: '1' } };
    const done = { ...untorqued, doneAt: noon };
    expect(stops({ steps: [done], reasons })).toEqual([]);
    expect(stops({ steps: [done, { ...done, id: 's2' }], reasons })).toEqual(['no-torque-step']);
  });

  test('can’t be signed over a step that was done before its sizes changed', () => {
    expect(stops({ steps: [{ ...step, doneAt: noon, changed: true }] })).toEqual(['step-changed']);
  });
});

describe('a written reason', () => {
  const worksheet = (as: string) => ({
    id: 'w1',
    title: 'Caliper bolts',
    found: 'no-good' as const,
    said: 'No good.',
    used: true,
    as,
  });
  const answerTo = (why: string, changes: Partial<SignOffQuestion> = {}) =>
    signOff({
      ...ready,
      worksheets: [worksheet('12.00 of 25.34')],
      reasons: { 'worksheet-no-good w1': { why, as: '12.00 of 25.34' } },
      ...changes,
    });

  test('lets that one blocker pass, and is told', () => {
    const answer = answerTo('Pull-tested to 40 kN on the bench');
    expect(answer.blockers).toEqual([]);
    expect(answer.standing).toMatchObject([
      { key: 'worksheet-no-good w1', why: 'Pull-tested to 40 kN on the bench' },
    ]);
    expect(saySignOff(answer)).toBe('Can be signed: one thing stands by your reason.');
  });

  test('says nothing for any other blocker, of the same kind or another', () => {
    const two = answerTo('Pull-tested to 40 kN', {
      worksheets: [worksheet('12.00 of 25.34'), { ...worksheet('12.00 of 25.34'), id: 'w2' }],
      cuts: [{ id: 'w1', name: 'Spacer', state: 'over', older: false }],
    });
    expect(two.blockers.map(({ key }) => key)).toEqual(['worksheet-no-good w2', 'cut-over w1']);
  });

  test('is asked again when the figure it was written about is another one', () => {
    const answer = answerTo('Pull-tested to 40 kN', { worksheets: [worksheet('11.00 of 25.34')] });
    expect(answer.standing).toEqual([]);
    expect(answer.blockers).toMatchObject([{ wroteBefore: 'Pull-tested to 40 kN' }]);
  });

  test.each(['', '   ', '-', '...', 'ok', 'aaaaaaaaaa', '......., ,'])(
    'is none where “%s” is written',
    (why) => {
      expect(isReason(why)).toBe(false);
      expect(answerTo(why).blockers).toHaveLength(1);
    },
  );

  test.each(['proof-loaded', 'Drum only, no torque', 'siehe Blatt 12'])(
    'is one where “%s” is written',
    (why) => {
      expect(isReason(why)).toBe(true);
    },
  );

  test('can’t be written for a record that can’t be read', () => {
    const reasons = { unreadable: { why: 'I know what was in it', as: '' } };
    expect(stops({ unreadable: 1, reasons })).toEqual(['unreadable']);
  });
});

describe('a job that touches no brake, steering, axle or wheel', () => {
  const systems: readonly System[] = ['engine'];

  test('is warned of what would stop one that does', () => {
    const changes: Partial<SignOffQuestion> = {
      systems,
      checks: [{ id: 'c1', name: 'End play', found: 'no-good', older: false }],
      cuts: [{ id: 'k1', name: 'Spacer', state: 'to-cut', older: false }],
      unchecked: [
        { title: 'Idler stack', used: true },
        { title: 'Idler bushing', used: false },
      ],
    };
    expect(stops(changes)).toEqual([]);
    expect(warns(changes)).toEqual(['cut-open', 'check-missing', 'check-failed']);
  });

  test('needs no check', () => {
    expect(warns({ systems, checks: [] })).toEqual([]);
  });

  test('is stopped all the same by a mock-up part, a step not done, a torque without figure, and wet locker', () => {
    const found = stops({
      systems,
      parts: [{ id: 'p1', name: 'Outer spacer', isMockUp: true }],
      steps: [
        step,
        { ...step, doneAt: noon, torque: { typed: '', source: '' } },
        { ...step, doneAt: noon, torque: { typed: '45', source: ' ' } },
        { ...step, doneAt: noon, locker: 'blue', cureHours: '24' },
      ],
    });
    expect(found).toEqual([
      'mock-up-in',
      'step-not-done',
      'no-torque-figure',
      'no-torque-source',
      'locker-curing',
    ]);
  });
});

describe('a record that can’t be read', () => {
  test('stops a brake job, as it may be a failed check, and is to be known before on a tank job', () => {
    expect(stops({ unreadable: 1 })).toEqual(['unreadable']);
    expect(stops({ unreadable: 1, systems: [], touchesNone: true })).toEqual([]);
    expect(warns({ unreadable: 1, systems: [], touchesNone: true })).toEqual(['unreadable']);
    expect(stops({ unreadable: 0 })).toEqual([]);
  });

  test('is counted and said once, however many there are', () => {
    const said = (unreadable: number) => signOff({ ...ready, unreadable }).blockers.map(sayFinding);
    expect(said(1).map(({ what }) => what)).toEqual(['Can’t be read by this version: one record']);
    expect(said(3).map(({ what }) => what)).toEqual(['Can’t be read by this version: 3 records']);
  });
});

describe('a thread locker', () => {
  const at = (hoursAgo: number, cureHours = '24') =>
    signOff({
      ...ready,
      steps: [{ ...step, doneAt: noon - hoursAgo * HOUR, locker: 'medium', cureHours }],
    }).blockers;

  test('with 24 h to cure stops the signing until 24 h after its step was done, to the minute', () => {
    expect(at(24)).toEqual([]);
    expect(at(23.5)).toEqual([
      {
        code: 'locker-curing',
        key: 'locker-curing s1',
        as: '',
        name: 'Fit the spacer',
        place: { at: 'step', id: 's1' },
        number: 1,
        hoursLeft: 0.5,
      },
    ]);
  });

  test('put on later than a clock set back says has all of its time to go, not years', () => {
    expect(at(-50_000)).toMatchObject([{ code: 'locker-curing', hoursLeft: 24 }]);
  });

  test('that cures in half an hour is written .5', () => {
    expect(at(0.25, '.5')).toHaveLength(1);
    expect(at(0.5, '.5')).toEqual([]);
  });

  test('has cured so many hours after its step was done, and never before that', () => {
    expect(curedAt({ doneAt: noon, cureHours: '6' })).toBe(noon + 6 * HOUR);
    expect(curedAt({ cureHours: '6' })).toBeUndefined();
    expect(curedAt({ doneAt: noon })).toBeUndefined();
    expect(curedAt({ doneAt: noon, cureHours: '' })).toBeUndefined();
    expect(curedAt({ doneAt: noon, cureHours: 'overnight' })).toBeUndefined();
  });

  test('without a cure time is warned of on a job that can’t kill', () => {
    expect(
      warns({ systems: [], touchesNone: true, steps: [{ ...step, doneAt: noon, locker: 'medium' }] }),
    ).toEqual(['no-cure-time']);
  });
});

describe('what else should be known before signing', () => {
  test('is that no odometer was read, and on a job that can’t kill that no step is written down', () => {
    expect(stops({ steps: [], lacksOdometer: true })).toEqual(['no-steps']);
    expect(warns({ lacksOdometer: true })).toEqual(['no-odometer']);
    expect(warns({ systems: [], touchesNone: true, steps: [] })).toEqual(['no-steps']);
  });
});

describe('what stands in the way', () => {
  const all: SignOffQuestion = {
    ...ready,
    steps: [
      { ...step, torque: { typed: '', source: '' } },
      { ...step, doneAt: noon, torque: { typed: '45', source: '' } },
      { ...step, doneAt: noon, locker: 'medium', cureHours: '1.5' },
      { ...step, doneAt: noon, locker: 'medium', changed: true },
    ],
    worksheets: (['no-good', 'too-close', 'no-answer', 'no-answer'] as const).map((found, index) => ({
      id: `w${index}`,
      title: 'Rear axle',
      found,
      said: 'Too tight: .004 in.',
      used: index < 3,
    })),
    parts: [{ id: 'p1', name: 'Outer spacer', isMockUp: true }],
    checks: (['not-done', 'no-good', 'too-close', 'good'] as const).map((found, index) => ({
      id: `c${index}`,
      name: 'Float',
      found,
      older: found === 'good',
      readBefore: found === 'good',
    })),
    unchecked: [
      { title: 'Rear axle', used: true },
      { title: 'Bushing instead', used: false },
    ],
    cuts: (['to-cut', 'over', 'scrapped', 'to-size'] as const).map((state, index) => ({
      id: `k${index}`,
      name: 'Spacer, faced',
      state,
      older: state === 'to-size',
    })),
    lacksOdometer: true,
    unreadable: 2,
  };

  test('is counted', () => {
    // What can't be read, four worksheets less the one that is tried out, three cuts and one older, one worksheet without its
    // check, three checks and one older, read before besides, one part, two of a torque, one step not done, one changed,
    // one curing, one without a cure time: 1 + 3 + 4 + 1 + 5 + 1 + 2 + 1 + 1 + 1 + 1.
    expect(saySignOff(signOff(all))).toBe('21 things stand in the way of signing.');
  });

  test('is said with what to do about it', () => {
    const answer = signOff(all);
    const said = [...answer.blockers, ...answer.warnings].map(sayFinding);
    expect(said).toContainEqual({
      what: 'Outer spacer is still a mock-up',
      todo: 'Fit the real part, then say that it is swapped.',
    });
    expect(said).toContainEqual({ what: 'Step 1 is not done', todo: 'Fit the spacer' });
    expect(said).toContainEqual({
      what: 'Step 3: the thread locker is still curing',
      todo: '1 h 30 min to go. Fit the spacer',
    });
    expect(said).toContainEqual({ what: 'Float: no good', todo: 'Put it right, then check again.' });
    expect(said).toContainEqual({
      what: 'Nothing checks Rear axle',
      todo: 'Parts were made or put together by it. Add the check it offers.',
    });
    expect(
      sayFinding({
        code: 'no-torque-figure',
        key: '',
        as: '',
        place: { at: 'step', id: 's1' },
        name: 'Tighten the nut.',
        number: 2,
      }).todo,
    ).toBe('Tighten the nut. Type the service manual’s figure.');
    for (const { what, todo } of said) {
      expect(what).toMatch(/^[A-Z]/);
      expect(what + todo).not.toMatch(/undefined|NaN|null/);
    }
    // One of each kind but the three that exclude others: no check at all, no step at all, no torque on any.
    expect(new Set(codes([...answer.blockers, ...answer.warnings])).size).toBe(24);
    for (const lone of [stops({ checks: [] }), stops({ steps: [] })]) expect(lone).toHaveLength(1);
    expect(signOff({ ...ready, checks: [] }).blockers.map(sayFinding)[0]?.what).toBe(
      'No fit-up check at all',
    );
    expect(signOff({ ...ready, steps: [] }).blockers.map(sayFinding)[0]?.what).toBe(
      'No assembly step is written down',
    );
  });

  test.each([
    { hours: 6, says: '6 h' },
    { hours: 1.5, says: '1 h 30 min' },
    { hours: 1 / 3, says: '20 min' },
    { hours: 0.999, says: '1 h' }, // 59.94 minutes: a begun minute counts
    { hours: 0.001, says: '1 min' },
  ])('in hours is said as $says', ({ hours, says }) => {
    expect(sayHours(hours)).toBe(says);
  });
});
