import { describe, expect, test } from 'vitest';
import {
  lengthOf,
  decimalText,
  isMore,
  minus,
  ratioOf,
  type Length,
} from '../../../../src/engine/length/length.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { allThreads, threadNamed } from '../../../../src/engine/thread/threads.ts';
import { cutsOfThread, THREAD_CUTS } from '../../../../src/engine/worksheets/thread-cut/cuts-of-thread.ts';
import { sayThreadCutRefusal } from '../../../../src/engine/worksheets/thread-cut/say-thread-cut.ts';
import { studFor } from '../../../../src/engine/worksheets/thread-cut/stud.ts';
import {
  threadCut,
  type ThreadCutQuestion,
} from '../../../../src/engine/worksheets/thread-cut/thread-cut.ts';

const exact = (text: string) => typedEstimate(lengthOf(text));
const both = (text: string) => ({ least: exact(text), most: exact(text) });

function named(designation: string) {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

function question(designation: string, more: Partial<ThreadCutQuestion> = {}): ThreadCutQuestion {
  const thread = named(designation);
  const unit = thread.threadsPerInch === undefined ? 'mm' : 'in';
  const mark = lengthOf(unit === 'in' ? '.001 in' : '0.02 mm');
  return {
    thread,
    outside: both(unit === 'in' ? '1.250 in' : '26 mm'),
    wire: undefined,
    infeed: 'straight',
    hand: 'right',
    dial: { reads: 'diameter', graduation: mark },
    steps: { outside: mark, length: mark },
    material: undefined,
    stud: undefined,
    unit,
    ...more,
  };
}

function answered(designation: string, more: Partial<ThreadCutQuestion> = {}) {
  const result = threadCut(question(designation, more));
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

function refused(designation: string, more: Partial<ThreadCutQuestion>, unit: 'in' | 'mm' = 'in'): string {
  const result = threadCut(question(designation, more));
  return result.ok ? 'answered' : sayThreadCutRefusal(result.refusal, unit);
}

const text = (size: Length, unit: 'in' | 'mm') => decimalText(size, unit, unit === 'in' ? 4 : 3);

const readBy = (toolId: string) =>
  typedEstimate(
    lengthOf('.0450 in'),
    usualTools.find(({ id }) => id === toolId),
  );

describe('limits over the wires on hand', () => {
  // Pitch diameters as ASME B1.1 and ISO 965-2 print them, from memory; over the wires by hand, E + 3W − .866025P and
  // .75 W (P / πE)² of the lead.
  test.each([
    // .4485 and .4435; .4485 + .1350 − .0666173 + .0001006; .4435 + .0683827 + .0001029
    { thread: '1/2-13 UNC', wire: '.0450 in', upper: '0.5170', lower: '0.5120', unit: 'in' },
    // .6832 and .6773; .6832 + .1800 − .0866025 + .0000977; .6773 + .0933975 + .0000994
    { thread: '3/4-10 UNC', wire: '.0600 in', upper: '0.7767', lower: '0.7708', unit: 'in' },
    // 7.160 and 7.042; 7.160 + 2.250 − 1.0825318 + .0017371; 7.042 + 1.1674682 + .0017958
    { thread: 'M8x1.25', wire: '0.75 mm', upper: '8.329', lower: '8.211', unit: 'mm' },
    // 8.994 and 8.862; 8.994 + 2.7 − 1.2990381 + .0019024; 8.862 + 1.4009619 + .0019595
    { thread: 'M10x1.5', wire: '0.9 mm', upper: '10.397', lower: '10.265', unit: 'mm' },
  ] as const)('$thread over wires of $wire: $lower to $upper (ASME B1.1, ISO 965)', (row) => {
    const { overWires } = answered(row.thread, { wire: exact(row.wire) });
    expect([text(overWires.lower, row.unit), text(overWires.upper, row.unit)]).toEqual([
      row.lower,
      row.upper,
    ]);
  });

  test('a wire that is only known to a band takes three times that off both limits', () => {
    const wire = readBy('micrometer-0-1');
    const loose = answered('1/2-13 UNC', { wire: exact('.0450 in') }).overWires;
    const result = threadCut(question('1/2-13 UNC', { wire }));
    if (!result.ok) throw new Error(result.refusal.code);
    expect(isMore(result.value.overWires.lower, loose.lower)).toBe(true);
    expect(isMore(loose.upper, result.value.overWires.upper)).toBe(true);
  });

  test.each(['flank', 'straight'] as const)(
    'every thread is planned inside its class, fed in %s',
    (infeed) => {
      const graduation = lengthOf('.0005 in');
      const dial = {
        reads: 'diameter',
        graduation,
        ...(infeed === 'flank' && { alongFlank: true as const }),
      } as const;
      const wrong = allThreads.filter(({ designation }) => {
        const { overWires, passes } = answered(designation, { infeed, dial });
        const lands = passes.at(-1)?.sizeAfter ?? overWires.from;
        return isMore(lands, overWires.upper) || isMore(overWires.lower, lands);
      });
      expect(wrong).toEqual([]);
    },
  );
});

describe('what is turned and how deep', () => {
  test('1/2-13: outside .4876 to .4985 (ASME B1.1, threads_un.csv)', () => {
    const { outside } = answered('1/2-13 UNC');
    expect([text(outside.lower, 'in'), text(outside.upper, 'in')]).toEqual(['0.4876', '0.4985']);
  });

  test('about 0.61343 P deep; the compound goes that over cos 29.5° (ISO 68-1, ASME B1.1)', () => {
    const { depth, slideMoves } = answered('1/2-13 UNC', {
      infeed: 'flank',
      dial: { reads: 'diameter', graduation: lengthOf('.001 in'), alongFlank: true },
    });
    // An outside and a pitch diameter smaller by their own tolerances move it by a thousandth or two.
    expect(ratioOf(depth, named('1/2-13').pitch)).toBeCloseTo(0.61343, 1);
    expect(ratioOf(depth, slideMoves)).toBeCloseTo(0.870356, 5);
  });

  test('an outside that is inside its limits is not turned again, and the passes begin at it', () => {
    const answer = answered('1/2-13 UNC', { outside: both('.4950 in'), wire: exact('.0450 in') });
    const names = cutsOfThread(question('1/2-13 UNC', { outside: both('.4950 in') }), answer).flatMap(
      ({ offers }) => offers.map(({ name }) => name),
    );
    expect(names).toEqual([THREAD_CUTS.thread]);
    // .4950 + 3 · .0450 − .288675 / 13
    expect(decimalText(answer.overWires.from, 'in', 5)).toBe('0.60779');
  });

  test('in its nut of class 2B it has the allowance at least: 1/2-13 .0015 (ASME B1.1)', () => {
    expect(text(answered('1/2-13 UNC').play.least, 'in')).toBe('0.0015');
  });
});

describe('a stud from bar', () => {
  const thread = named('7/16-20 UNF');

  test('two nuts: grip and twice washer, nut, three pitches', () => {
    const grip = { least: exact('1.875 in'), most: exact('1.880 in') };
    const stud = studFor(thread, {
      grip,
      inPart: undefined,
      washer: lengthOf('.090 in'),
      nutHeight: lengthOf('.380 in'),
    });
    // 1.880 + 2 · (.090 + .380 + .150) = 3.120; thread .620 + .100 + .005 = .725; 3.120 − 1.450 = 1.670
    expect(
      [stud.lower, stud.nutEnd, stud.otherEnd, stud.plain].map((size) => size && text(size, 'in')),
    ).toEqual(['3.1200', '0.7250', '0.7250', '1.6700']);
    expect(text(minus(stud.upper, stud.lower), 'in')).toBe('0.0500');
  });

  test('an end in a part is threaded for what stands in it', () => {
    const stud = studFor(thread, {
      grip: both('1.000 in'),
      inPart: lengthOf('.500 in'),
      washer: undefined,
      nutHeight: lengthOf('.380 in'),
    });
    // 1.000 + .530 + .500; .500 + .050
    expect([stud.lower, stud.otherEnd].map((size) => text(size, 'in'))).toEqual(['2.0300', '0.5500']);
  });

  test('a short grip leaves no plain shank: it is threaded all along, and no thread is longer than the stud', () => {
    const stud = studFor(thread, {
      grip: both('.100 in'),
      inPart: undefined,
      washer: undefined,
      nutHeight: undefined,
    });
    expect(stud.plain).toBeUndefined();
    expect(isMore(stud.nutEnd, stud.lower)).toBe(false);
  });

  test('its cuts are its length, its outside, and a thread at either end, over the same wires', () => {
    const stud = { grip: both('1.875 in'), inPart: undefined, washer: undefined, nutHeight: undefined };
    const q = question('7/16-20 UNF', { outside: both('.500 in'), stud });
    const offers = cutsOfThread(q, answered('7/16-20 UNF', { outside: both('.500 in'), stud })).flatMap(
      (way) => way.offers,
    );
    expect(offers.map(({ operation }) => operation)).toEqual(['face', 'turn', 'thread', 'thread']);
    expect(new Set(offers.map(({ name }) => name)).size).toBe(4);
    expect(offers[2]?.target).toEqual(offers[3]?.target);
  });
});

describe('why it can’t be done so', () => {
  test('a wire that sinks in between the crests, or sits on them', () => {
    expect(refused('1/2-13 UNC', { wire: exact('.0350 in') })).toBe(
      'A wire of .035 in sinks in between the crests. Take one from .0406 in to .0704 in, best .0444 in.',
    );
    expect(refused('1/2-13 UNC', { wire: exact('.0800 in') })).toMatch(
      /^A wire of \.080 in sits on the crests\. Take/,
    );
  });

  test('a dial whose mark is wider than the limits', () => {
    const graduation = lengthOf('.005 in');
    expect(refused('1/2-13 UNC', { dial: { reads: 'radius', graduation } })).toBe(
      'One mark of the cross slide takes .010 in, the limits are .005 in apart. Take a finer dial, or feed along the flank.',
    );
  });

  test('a wire read with a caliper: three times its band leaves nothing', () => {
    expect(refused('1/2-13 UNC', { wire: readBy('digital-caliper') })).toMatch(
      /^The wire is known to ±\.001\d*: three times that uses up the limits\. Read it with a finer tool\.$/,
    );
  });

  test('a bar that is too small for the thread', () => {
    expect(refused('1/2-13 UNC', { outside: both('.480 in') })).toBe(
      '.480 in is too small for this thread: it wants .4876 in at least.',
    );
  });

  test('a pitch that no table has', () => {
    const thread = { ...named('M8x1.25'), pitch: lengthOf('1.1 mm'), designation: 'M8x1.1' };
    expect(refused('M8x1.25', { thread }, 'mm')).toBe(
      'M8x1.1 has no limits in the tables here. Pick another pitch.',
    );
  });
});
