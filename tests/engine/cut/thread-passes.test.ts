import { describe, expect, test } from 'vitest';
import type { LatheDial } from '../../../src/engine/cut/dial.ts';
import { passPlan } from '../../../src/engine/cut/pass-plan.ts';
import { takesFor } from '../../../src/engine/cut/pass-plan-takes.ts';
import { spokenDial } from '../../../src/engine/cut/say-cuts-spoken.ts';
import { sayDialReads, sayOnDial } from '../../../src/engine/cut/say-cuts.ts';
import {
  mostOnFlanks,
  sayOnCrests,
  sayThreading,
  sayThreadingShort,
} from '../../../src/engine/cut/say-threading.ts';
import { threadSteps, type ThreadSteps } from '../../../src/engine/cut/thread-passes.ts';
import { waysOut } from '../../../src/engine/ways-out/ways-out.ts';
import { decimalText, isLess, isMore, lengthOf, sum, times } from '../../../src/engine/length/length.ts';
import { sizeStep } from '../../../src/engine/length/metal-on.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const total = (steps: readonly number[]) => steps.reduce((so, one) => so + one, 0);

describe('a thread’s passes', () => {
  test('ends of the passes go as √n: 16, then 6, 5, 5 and so on, and two light ones (worked by hand)', () => {
    // √2 · 16 = 22.6, so 6; from 22 √(22² + 16²) = 27.2, so 5; from 27 31.4, so 4; from 31 34.9, so 3
    const steps = threadSteps({ before: 0, all: 46, largest: 16, least: 2, light: 3 });
    expect(steps.slice(0, 5)).toEqual([16, 6, 5, 4, 3]);
    expect(steps.slice(-2)).toEqual([3, 3]);
    expect(total(steps)).toBe(46);
  });

  test('begun anew at a depth that was measured, it goes on as if it had not been stopped', () => {
    // from 31 on: 34.9, so 3; from 34 37.6, so 3
    expect(threadSteps({ before: 31, all: 15, largest: 16, least: 2, light: 3 })[0]).toBe(3);
  });

  const tries: ThreadSteps[] = [1, 2, 3].flatMap((least) =>
    [3, 9, 20].flatMap((largest) =>
      [0, 5.5, 40].flatMap((before) =>
        Array.from({ length: 80 }, (_, all) => ({ before, all, largest, least, light: least + 1 })),
      ),
    ),
  );

  test('always come to the whole, and none is larger than the largest', () => {
    const wrong = tries.filter((q) => {
      const steps = threadSteps(q);
      return total(steps) !== q.all || steps.some((step) => step > q.largest || step < 1);
    });
    expect(wrong).toEqual([]);
  });

  test('none takes more area than the first, down to the least cut and the light ones', () => {
    const wrong = tries.filter((q) => {
      let at = q.before;
      return threadSteps(q).some((step) => {
        const area = (at + step) ** 2 - at ** 2;
        at += step;
        // The area rules no more where the least does; a crumb may join the pass before it.
        return step > 2 * q.least && area > q.largest ** 2;
      });
    });
    expect(wrong).toEqual([]);
  });

  test('none is less than the least that cuts, but where that is all there is', () => {
    const wrong = tries
      .filter(({ all, largest, least }) => all >= least && largest >= 2 * least)
      .filter((q) => threadSteps(q).some((step) => step < q.least));
    expect(wrong).toEqual([]);
  });
});

describe('a thread fed in along its flank', () => {
  const dial: LatheDial = {
    reads: 'diameter',
    graduation: inch('.001'),
    marksPerTurn: 100,
    alongFlank: true,
    slide: 'compound',
  };
  const takes = takesFor({ of: 'outside', operation: 'thread', cuttingTool: 'hss' });
  const q = {
    of: 'outside',
    present: inch('.6078'),
    threadFrom: inch('.6078'),
    target: inch('.5145'),
    lower: inch('.5120'),
    upper: inch('.5169'),
    dial,
    takes,
  } as const;

  test('a mark of the compound at 29.5° takes twice its cosine off the diameter: .001 takes .00174', () => {
    // cos 29.5° = .870356 (table of cosines)
    expect(decimalText(sizeStep('outside', dial), 'in', 6)).toBe('0.001741');
    expect(sayOnDial({ of: 'outside', dial, take: times(sizeStep('outside', dial), 9) }, 'in')).toBe(
      '.009 in',
    );
  });

  test('its passes end inside the limits, each on a mark, and the dial wraps', () => {
    const plan = passPlan(q);
    if (!plan.ok) throw new Error(plan.refusal.code);
    const { passes, lands } = plan.value;
    expect(isLess(lands, q.lower) || isMore(lands, q.upper)).toBe(false);
    // .0933 off the diameter is .0536 along the flank: no whole turn of .100
    expect(passes.at(-1)?.dial).toMatchObject({ turns: 0, direction: 'in', slide: 'compound' });
    expect(decimalText(sum(passes.map(({ asked }) => asked)), 'in', 3)).toBe('0.092');
    const first = passes[0];
    // .008 deep at most: nine marks of .00087
    expect(first && decimalText(first.dial.figure, 'in', 3)).toBe('0.009');
    expect(passes.length).toBeGreaterThan(8);
    const areas = passes.map(({ kind }) => kind).slice(-2);
    expect(areas).toEqual(['light', 'light']);
  });

  test('the dial is called the compound, on the screen and by voice, never a diameter', () => {
    const plan = passPlan(q);
    const to = plan.ok ? plan.value.passes[0]?.dial : undefined;
    expect(to && sayDialReads(to)).toBe('compound');
    expect(to && spokenDial(to, { unit: 'in', named: false })).toBe('Dial in nine, compound.');
  });

  test('measured half way, what is left is planned on, and no pass is larger than the one before', () => {
    const plan = passPlan({ ...q, present: inch('.5500') });
    if (!plan.ok) throw new Error(plan.refusal.code);
    const asked = plan.value.passes.map((pass) => pass.asked);
    expect(asked[0] && isLess(asked[0], inch('.0080'))).toBe(true);
    expect(isLess(plan.value.lands, q.lower) || isMore(plan.value.lands, q.upper)).toBe(false);
  });
});

describe('what is said of a thread at the lathe', () => {
  const threading = { wire: inch('.0450'), pitch: inch('.0769231'), infeed: 'flank', hand: 'right' } as const;

  test('which way the tool travels and where the compound stands', () => {
    expect(sayThreading(threading, undefined, 'in')).toEqual([
      'Compound 29.5° off square, its handle toward the tailstock. Feed with it; each pass begins with the cross slide at its zero.',
      'Right hand: the tool travels toward the chuck.',
      'Measure over three wires of .045 in.',
      'Two spring passes at the last setting before you measure.',
    ]);
    expect(
      sayThreading({ ...threading, hand: 'left', infeed: 'straight' }, undefined, 'in').slice(0, 2),
    ).toEqual([
      'Feed straight in by the cross slide; zero it where the tool touches.',
      'Left hand: begin in the run-out groove; the tool travels away from the chuck.',
    ]);
  });

  test('at the lathe all of it in one look', () => {
    const from = inch('.6077942');
    expect(sayThreadingShort(threading, from, 'in')).toBe('Toward the chuck; wires .045 from .5625 down.');
    expect(sayThreadingShort({ ...threading, hand: 'left' }, undefined, 'in')).toBe(
      'Left hand, away from the chuck; wires .045.',
    );
  });

  test('a size over wires that sit on the crests still is none: D + 1.5 W at most', () => {
    // An outside of .4950 with wires of .0450: .4950 + .0675 = .5625; from .4950 + .1350 − .288675/13 = .6077942
    const from = inch('.6077942');
    expect(decimalText(mostOnFlanks({ ...threading, from }), 'in', 4)).toBe('0.5625');
    expect(sayOnCrests(threading, { from, measured: inch('.5700') }, 'in')).toBe(
      'Over .5625 in the wires sit on the crests. Cut deeper, then measure over them.',
    );
    expect(sayOnCrests(threading, { from, measured: inch('.5600') }, 'in')).toBe('');
  });

  test('past its limit nothing but measuring again or a new part: a sleeve gives no flank back', () => {
    const ways = waysOut({
      of: 'outside',
      operation: 'thread',
      target: inch('.5145'),
      lower: inch('.5120'),
      upper: inch('.5169'),
      limitsFrom: '2A',
      present: inch('.5110'),
      tools: [],
      step: inch('.001'),
      finish: inch('.006'),
    });
    expect(ways?.ways.map(({ kind }) => kind).toSorted()).toEqual(['measure-again', 'new-part']);
  });
});
