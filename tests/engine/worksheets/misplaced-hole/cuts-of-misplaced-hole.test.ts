import { describe, expect, test } from 'vitest';
import { exactDecimalText, isLess, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { materialNamed, type MaterialId } from '../../../../src/engine/material/tables/materials.ts';
import { finest } from '../../../../src/engine/length/finest.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { checksOfMisplacedHole } from '../../../../src/engine/worksheets/misplaced-hole/checks-of-misplaced-hole.ts';
import { cutsOfMisplacedHole } from '../../../../src/engine/worksheets/misplaced-hole/cuts-of-misplaced-hole.ts';
import {
  misplacedHole,
  type MisplacedHoleQuestion,
} from '../../../../src/engine/worksheets/misplaced-hole/misplaced-hole.ts';
import { stepsOfMisplacedHole } from '../../../../src/engine/worksheets/misplaced-hole/steps-of-misplaced-hole.ts';
import { keepsItsLimits, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const known = (text: string) => typedEstimate(inch(text));
const part = (size: string) => ({ tightest: known(size), loosest: known(size) });
const dial = { reads: 'diameter', graduation: inch('.0005') } as const;

function metal(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
}

/*
 * A hole of .501 that is .062 off; RC5 at 1/2 beside a pin of .499: .5002 to .5019. With a dial of half thous the bore goes to
 * .5010: clearance .002, close enough within .001, so the offset within .0007. .5019 + 2(.060 + .062 + .0007) = .7473: 3/4.
 * FN1 at .71 to .95: hole 0 to +.0005, pin +.0007 to +.0011.
 */
const arm: MisplacedHoleQuestion = {
  where: { by: 'offset', offBy: known('.0620'), towardDegrees: 90 },
  bushed: {
    bore: part('.5010'),
    pin: part('.4990'),
    insideClass: 'RC5',
    pressClass: 'FN1',
    part: metal('low-carbon-steel'),
    bushing: metal('bearing-bronze'),
    bushingYieldMpa: 400,
    finish: 'fine',
    condition: 'plain',
    cold: 'freezer',
    shopCelsius: 20,
    step: inch('.0005'),
  },
  wall: known('.750'),
  inRightPlace: false,
  lock: 'dowel',
  finest: finest.in,
};

function worked(more: Partial<MisplacedHoleQuestion> = {}) {
  const question = { ...arm, ...more };
  const answer = misplacedHole(question);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return { question, answer: answer.value };
}

function waysOf(more: Partial<MisplacedHoleQuestion> = {}) {
  const { question, answer } = worked(more);
  const ways = cutsOfMisplacedHole(question, answer, dial);
  expect(ways.flatMap((way) => way.offers).every(keepsItsLimits)).toBe(true);
  return ways;
}

const bushed = (more: Partial<MisplacedHoleQuestion['bushed']>) => ({ bushed: { ...arm.bushed, ...more } });

// .010 is left for the last cut: .5010 − .010, within .5010 − .020 and .5010 − .002
const inTheChuck = 'Bushing, bored off its middle: .4910 (.4810 to .4990)';
const last = 'Bushing, bored once it is in: .5010 (.5002 to .5019)';
const turned = 'Bushing, outside turned: .7510 (.7507 to .7511)';

describe('a hole .062 off', () => {
  test('is five cuts in this order: open, ream 3/4, turn, bore off the middle, bore to size', () => {
    expect(waysSaid(waysOf())).toEqual({
      bushing: [
        'Bore, opened for the reamer: .5010 → .7400 (.7300 to .7480)',
        'Bore, reamed 3/4 in: .7500 (.7500 to .7505)',
        turned,
        inTheChuck,
        last,
      ],
    });
  });

  test('only the one in the chuck is set over: .062, within .0007', () => {
    const over = waysOf().flatMap((way) =>
      way.offers.flatMap(({ name, setOver }) => (setOver ? [{ name, ...setOver }] : [])),
    );
    expect(over.map(({ name, by, within }) => [name, by, within && exactDecimalText(within, 'in')])).toEqual([
      ['Bushing, bored off its middle', inch('.0620'), '0.0007'],
    ]);
  });

  test('bored in its right place the first cut says so, and nothing is set over', () => {
    // .501 + .124 + .002 = .627, the larger of that and .5019 + .120: 41/64 is .640625
    const [way] = waysOf({ inRightPlace: true });
    expect(way?.offers.map(({ name }) => name)).toEqual([
      'Bore, opened in its right place',
      'Bore, reamed 41/64 in',
      'Bushing, outside turned',
      'Bushing, bored once it is in',
    ]);
    expect(way?.offers.some(({ setOver }) => setOver)).toBe(false);
  });

  test('however large the hole is, it is bored in its right place clean and never past the reamer that follows', () => {
    // .6459 + 2 · .0472 = .7403, and .002 to clean up: .7423, so 3/4; a reamer is left .002 at least: .748
    const [way] = waysOf({
      inRightPlace: true,
      where: { by: 'offset', offBy: known('.0472'), towardDegrees: 30 },
      bushed: { ...arm.bushed, bore: part('.6459'), pin: part('.4950') },
    });
    const [opened, reamed] = way?.offers ?? [];
    expect(opened?.name).toBe('Bore, opened in its right place');
    expect(reamed?.name).toBe('Bore, reamed 3/4 in');
    expect(opened && isLess(opened.target, inch('.748001'))).toBe(true);
    expect(opened && isLess(inch('.7402'), opened.lower)).toBe(true);
  });

  test('what is reamed and turned already isn’t cut again', () => {
    const [way] = waysOf(bushed({ reamed: part('.7502'), outside: part('.7509') }));
    expect(way?.offers.map(({ name }) => name)).toEqual([
      'Bushing, bored off its middle',
      'Bushing, bored once it is in',
    ]);
  });

  test('takes no cut where too little wall would be left: .500 less .1245 is .3755, and half of 3/4 is .375', () => {
    expect(waysOf({ wall: known('.4995') })).toHaveLength(1);
    expect(waysOf({ wall: known('.4994') })).toEqual([]);
  });
});

describe('the checks', () => {
  const said = (more: Partial<MisplacedHoleQuestion> = {}) => {
    const { question, answer } = worked(more);
    const size = (length: Length | undefined) => (length ? exactDecimalText(length, 'in') : '');
    return checksOfMisplacedHole(question, answer).flatMap(({ name, by, limits }) =>
      by === 'by-eye' ? [] : [`${name}: ${size(limits.lower)} to ${size(limits.upper)}, ${by}`],
    );
  };

  test('the offset is read as runout: twice .062 ∓ .0007', () => {
    expect(said()).toEqual([
      'Bushing’s bore off its middle: 0.1226 to 0.1254, runout',
      'Bore of the bushing, pressed in: 0.5002 to 0.5019, bore',
    ]);
  });

  test('with another hole their distance over plugs, .001 about it', () => {
    expect(said({ where: { by: 'apart', apart: known('6.062'), wanted: known('6.000') } })).toContain(
      'Distance of both holes: 5.999 to 6.001, length',
    );
  });

  test('from two edges each of both, seven tenths of .001 about it', () => {
    const spot = (across: string, up: string) => ({ across: known(across), up: known(up) });
    const found = said({
      where: { by: 'edges', now: spot('1.250', '2.000'), wanted: spot('1.250', '2.062') },
    });
    expect(found).toEqual(
      expect.arrayContaining([
        'Hole from the left edge: 1.2493 to 1.2507, length',
        'Hole from the lower edge: 2.0613 to 2.0627, length',
      ]),
    );
  });
});

describe('the steps', () => {
  const steps = (more: Partial<MisplacedHoleQuestion> = {}) => {
    const { question, answer } = worked(more);
    return stepsOfMisplacedHole(question, answer, 'in');
  };

  test('a line is scribed first, the mark goes on it, and it is locked before it is bored to size', () => {
    const [scribed, ...others] = steps();
    expect(scribed?.orientation).toMatch(/^toward 12.o’clock$/);
    const pressed = others.findIndex(({ orientation = '' }) => /mark of its thin side/.test(orientation));
    const locked = others.findIndex(({ text }) => text.startsWith('Drive a dowel in'));
    const bored = others.findIndex(({ text }) => text.startsWith('Bring the bushing to size'));
    expect(pressed).toBeGreaterThan(-1);
    expect(locked).toBeGreaterThan(pressed);
    expect(bored).toBeGreaterThan(locked);
  });

  test('dropped in hot the gloves are still said beside the mark', () => {
    const hot = steps(bushed({ part: metal('alloy-steel') })).find(({ orientation = '' }) =>
      /mark of its/.test(orientation),
    );
    expect(hot?.orientation).toMatch(/^insulated gloves on;.*the mark of its thin side on the scribed line$/);
  });

  test('a plain bushing is not marked and not locked', () => {
    const all = steps({ inRightPlace: true }).flatMap(({ text, orientation = '' }) => [text, orientation]);
    expect(all.some((text) => /mark|scribe|dowel/i.test(text))).toBe(false);
  });
});
