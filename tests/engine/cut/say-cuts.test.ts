import { describe, expect, test } from 'vitest';
import {
  cutProgress,
  type CutProgress,
  type CutQuestion,
  type CutStage,
} from '../../../src/engine/cut/cut-progress.ts';
import { cutSpeed, type CutSpeed, type SpeedQuestion } from '../../../src/engine/cut/cut-speed.ts';
import { dialSetting, type DialSetting, type LatheDial } from '../../../src/engine/cut/dial.ts';
import { lengthOf, zero } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import type { PassPlan } from '../../../src/engine/cut/pass-plan.ts';
import { latheCautions, LATHE_CAUTION } from '../../../src/engine/cut/say-cuts-cautions.ts';
import { spokenAmount, spokenBare, spokenSize, wordsFor } from '../../../src/engine/cut/say-cuts-numbers.ts';
import { sayCutRefusal } from '../../../src/engine/cut/say-cuts-refusal.ts';
import { saySpeed, sayStandIn, sayTooFast, speedFigure } from '../../../src/engine/cut/say-cuts-speed.ts';
import { spokenDial, spokenFurther, spokenProgress } from '../../../src/engine/cut/say-cuts-spoken.ts';
import {
  sayCutKind,
  sayDialFigure,
  sayLeft,
  sayOver,
  sayPlanNote,
  sayProof,
  saySpring,
  sayStage,
  dialWord,
  sayOnDial,
} from '../../../src/engine/cut/say-cuts.ts';
import type { MeasuredPass } from '../../../src/engine/cut/spring.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const [caliper] = usualTools;
if (!caliper) throw new Error('no tools');
const micrometer: MeasuringTool = {
  ...caliper,
  id: 'tenths',
  name: 'micrometer',
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  repeatability: inch('.00005'),
};
const radius: LatheDial = { reads: 'radius', graduation: inch('.001'), marksPerTurn: 100 };

/** The ring of .046 to go, on a radius dial: .018 is not its plan, .015 and twice .004 are. */
const ring: CutQuestion = {
  of: 'outside',
  operation: 'ring',
  cuttingTool: 'hss',
  material: 'stainless-303',
  target: inch('1.498'),
  lower: inch('1.4975'),
  upper: inch('1.4985'),
  limitsFrom: 'recess less clearance',
  blank: inch('1.625'),
  largestTake: inch('.036'),
  passes: [],
  dial: radius,
  tools: [micrometer],
};

const pass = (
  measured: string,
  asked?: string,
  tool: MeasuringTool | undefined = micrometer,
): MeasuredPass => ({
  measured: inch(measured),
  struckOut: false,
  ...(tool && { tool }),
  ...(asked !== undefined && { asked: inch(asked) }),
});

const at = (measured: string, tool?: MeasuringTool) =>
  cutProgress({ ...ring, passes: [pass(measured, '.010', tool)] });

function setting(take: string, of: CutKind = 'outside'): DialSetting {
  const set = dialSetting({ of, dial: radius, take: inch(take) });
  if (!set.ok) throw new Error(set.refusal.code);
  return set.value;
}

describe('what stands on the lathe screen', () => {
  test('names where the cut stands', () => {
    const stages: readonly CutStage[] = ['to-measure', 'to-cut', 'cutting', 'last-pass', 'to-size', 'over'];
    expect(stages.map(sayStage)).toEqual([
      'Measure it first',
      'To cut',
      'Cutting',
      'Last pass next',
      'To size',
      'Past the limit',
    ]);
  });

  test('says on what the amount is left: a diameter, a length, a depth, a width', () => {
    const kinds: readonly CutKind[] = [
      'outside',
      'bore',
      'tap-drill',
      'length',
      'recess-depth',
      'slot-depth',
      'slot-width',
    ];
    expect(kinds.map((of) => sayLeft(of, inch('.046')))).toEqual([
      ...Array.from({ length: 3 }, () => 'left to take, on diameter'),
      'left to take, on length',
      'left to take, on depth',
      'left to take, on depth',
      'left to take, on width',
    ]);
    expect(sayLeft('outside', inch('-0.0005'))).toBe('past the target, on diameter');
    expect(kinds.map(sayCutKind)).toEqual(['outside', 'bore', 'hole', 'length', 'depth', 'depth', 'width']);
  });

  test('shows the dial with its turns', () => {
    expect(sayDialFigure(setting('.036'), 'in')).toBe('.018');
    expect(sayDialFigure(setting('.236'), 'in')).toBe('1 turn + .018');
    expect(sayDialFigure(setting('.436'), 'in')).toBe('2 turns + .018');
    expect(sayDialFigure(setting('.200'), 'in')).toBe('1 turn + 0');
  });
});

describe('what a plan has to say', () => {
  const plan = (q: Partial<CutQuestion>): PassPlan => {
    const made = cutProgress({ ...ring, ...q }).plan;
    if (!made?.ok) throw new Error('no plan');
    return made.value;
  };

  test('is nothing where it ends on the target with no pass too light', () => {
    expect(sayPlanNote(plan({ blank: inch('1.544') }), 'in')).toBe('');
  });

  test('is that a pass may rub', () => {
    expect(sayPlanNote(plan({ blank: inch('1.500') }), 'in')).toBe(
      'A pass of .002 in is less than this metal wants: it may rub and harden. Keep the tool sharp and the feed up.',
    );
  });

  test('is how proud of the target it ends, or how far past it inside the limits', () => {
    const wide = { upper: inch('1.4999'), lower: inch('1.4960') };
    expect(sayPlanNote(plan({ ...wide, blank: inch('1.5445') }), 'in')).toBe(
      'It ends .0005 in proud of the target, which is as near as the dial comes with metal left on.',
    );
    expect(sayPlanNote(plan({ lower: inch('1.4960'), blank: inch('1.5449') }), 'in')).toBe(
      'No mark of the dial lands on the target: it ends .0011 in past it, inside the limits.',
    );
  });

  test('says nothing of a size that is left as it is', () => {
    expect(sayPlanNote(plan({ blank: inch('1.4983') }), 'in')).toBe('');
  });

  test('is what the last pass asks for the spring, more or less', () => {
    const base = plan({ blank: inch('1.544') });
    expect(sayPlanNote({ ...base, correction: inch('.0008') }, 'in')).toBe(
      'The last pass asks .0008 in more for the spring.',
    );
    expect(sayPlanNote({ ...base, correction: inch('-0.0008') }, 'in')).toBe(
      'The last pass asks .0008 in less for the spring.',
    );
  });
});

describe('past the limit', () => {
  test('it says stop, by how much, and that no cut puts metal back', () => {
    expect(sayOver(ring, at('1.4968'), 'in')).toBe(
      'Stop. 1.4968 in is .0007 in past the limit of 1.4975 in. No cut puts metal back; the ways out are below.',
    );
  });

  test('inside the tool’s band it says to measure again first', () => {
    expect(sayOver(ring, at('1.4974', caliper), 'in')).toBe(
      'Stop. 1.4974 in is .0001 in past the limit of 1.4975 in. The tool knows it only to ±.0012: measure again before anything else.',
    );
  });

  test('short of it there is nothing to say', () => {
    expect(sayOver(ring, at('1.498'), 'in')).toBe('');
    const { blank: _, ...unknown } = ring;
    expect(sayOver(ring, cutProgress(unknown), 'in')).toBe('');
  });
});

describe('what a measurement proves', () => {
  const proof = (progress: CutProgress) => {
    if (!progress.proof) throw new Error('nothing is proved');
    return sayProof('outside', progress.proof, 'in');
  };

  test('is good, or no good with by how much', () => {
    expect(proof(at('1.498'))).toBe('Good: outside 1.498 in, want 1.4975 to 1.4985 in.');
    expect(proof(at('1.4968'))).toBe('Too small: outside 1.4968 in, want 1.4975 to 1.4985 in.');
  });

  test('is too close to call, with what would settle it', () => {
    expect(proof(at('1.4978', caliper))).toBe(
      'Too close to call: outside 1.4978 in ±.0012, want 1.4975 to 1.4985 in. The micrometer with 1 reading would settle it, to ±.00015.',
    );
  });

  test('says that the size is taken as exact where no tool is named', () => {
    const bare: MeasuredPass = { measured: inch('1.498'), struckOut: false };
    expect(proof(cutProgress({ ...ring, passes: [bare] }))).toBe(
      'Good: outside 1.498 in, want 1.4975 to 1.4985 in. No measuring tool is named, so the size is taken as exact.',
    );
  });
});

test('what is said of the spring is what was learnt, or why nothing was', () => {
  expect(
    saySpring(
      { kind: 'learnt', springs: inch('.0008'), halfWidth: inch('.0001'), asked: inch('.006') },
      'in',
    ),
  ).toBe(
    'The tool springs .0008 in (±.00010), from two equal light passes. The last pass asks for that much more, never past the limit.',
  );
  expect(
    saySpring(
      { kind: 'learnt', springs: inch('-0.0008'), halfWidth: inch('.0001'), asked: inch('.006') },
      'in',
    ),
  ).toBe(
    'The tool takes .0008 in more than it is asked (±.00010), from two equal light passes. The next plan asks for less.',
  );
  expect(
    saySpring({ kind: 'inside-band', difference: inch('-0.0006'), halfWidth: inch('.00085') }, 'in'),
  ).toBe(
    "Asked and got differ by .0006 in, which is inside the measuring tool's band of ±.00085: nothing is corrected.",
  );
  expect(saySpring({ kind: 'unsteady', first: inch('.0006'), second: inch('.0024') }, 'in')).toMatch(
    /^Two equal light passes came out \.0006 in and \.0024 in short of what was asked\./,
  );
  expect(saySpring({ kind: 'not-learnt', why: 'no-measuring-tool' }, 'in')).toMatch(
    /^No measuring tool is named/,
  );
  expect(saySpring({ kind: 'not-learnt', why: 'no-two-equal-light' }, 'in')).toMatch(
    /once two equal light passes/,
  );
});

describe('a cut that can’t be planned', () => {
  test.each([
    [
      { code: 'metal-gone', present: inch('1.497'), limit: inch('1.4975'), past: inch('.0005') },
      /^At 1\.497 in it is \.0005 in past 1\.4975 in already/,
    ],
    [
      {
        code: 'no-mark-lands',
        from: inch('1.5433'),
        step: inch('.002'),
        lower: inch('1.4976'),
        upper: inch('1.4984'),
        before: inch('1.4993'),
        past: inch('1.4973'),
      },
      /^From 1\.5433 in the dial, in steps of \.002 in, lands on 1\.4993 or 1\.4973 in, and neither is inside 1\.4976 to 1\.4984 in\. Use a finer dial/,
    ],
    [
      { code: 'take-below-mark', largest: inch('.001'), step: inch('.002') },
      /^One mark of the dial takes \.002 in, more than the \.001 in one pass may take\./,
    ],
    [
      { code: 'too-many-passes', passes: 250, largest: inch('.001') },
      /^At \.001 in a pass that would be 250 passes\./,
    ],
    [{ code: 'between-marks', take: inch('.003'), step: inch('.002') }, /^\.003 in falls between two marks/],
    [{ code: 'no-diameter-for-speed' }, /^A speed needs a diameter\./],
  ] as const)('%o says why and what can be done', (refusal, sentence) => {
    expect(sayCutRefusal(refusal, 'in')).toMatch(sentence);
  });
});

describe('the spindle speed', () => {
  const speed = (q: Partial<SpeedQuestion>): CutSpeed => {
    const material = materialNamed('low-carbon-steel');
    if (!material) throw new Error('no steel');
    const result = cutSpeed({
      material,
      cuttingTool: 'hss',
      operation: 'turn',
      pass: 'rough',
      diameters: [inch('1')],
      lathe: { speedsRpm: [70, 210, 400] },
      ...q,
    });
    if (!result.ok) throw new Error('no speed');
    return result.value;
  };
  const aluminium = materialNamed('aluminium-6061');
  const acetal = materialNamed('acetal');
  const titanium = materialNamed('titanium-6-4');
  if (!aluminium || !acetal || !titanium) throw new Error('the table is short');

  test('is the lathe’s own, with the ideal and what the books give beside it: 362 is 210', () => {
    // 12 · 95 / π = 362.9, of 12 · 70 / π = 267.4 to 12 · 120 / π = 458.4
    expect([speedFigure(speed({})), saySpeed(speed({}))]).toEqual([
      '210',
      'next below 362; 268 to 458 by the books',
    ]);
  });

  test('is rounded down, never up, where the lathe has any', () => {
    const any = speed({ lathe: { speedsRpm: [] } });
    expect([speedFigure(any), saySpeed(any)]).toEqual(['362', '268 to 458 by the books']);
  });

  test('says what holds it back', () => {
    // 12 · 450 / π = 1718.9
    const ringSpeed = { material: aluminium, operation: 'ring' } as const;
    expect(saySpeed(speed({ ...ringSpeed, lathe: { speedsRpm: [] } }))).toBe(
      'a ring on a mandrel is turned no faster (chosen, not published); 1718 would be right for the metal',
    );
    expect(saySpeed(speed(ringSpeed))).toBe(
      'next below 600: a ring on a mandrel is turned no faster (chosen, not published)',
    );
    const most = speed({ material: aluminium, lathe: { speedsRpm: [], mostRpm: 900 } });
    expect(saySpeed(most)).toBe('the most this lathe turns; 1718 would be right for the metal');
  });

  test('says where to give what chuck and lathe may turn, while nobody has', () => {
    const small = speed({ material: aluminium, diameters: [inch('.05')], lathe: { speedsRpm: [] } });
    expect(speedFigure(small)).toBe('1000');
    expect(saySpeed(small)).toMatch(
      /^held low: give in Shop what chuck and lathe may turn; \d+ would be right/,
    );
  });

  test('says where even the slowest is too fast, and what to do', () => {
    const big = speed({ diameters: [inch('6')] });
    // 12 · 95 / (π · 6) = 60.5
    expect([speedFigure(big), saySpeed(big)]).toEqual([
      '70',
      'the slowest it has, and too fast: 60 is right',
    ]);
    expect(sayTooFast(big)).toMatch(/^The slowest speed this lathe has, 70 rpm, is faster than the 60 rpm/);
    expect(sayTooFast(speed({}))).toBe('');
  });

  test('says the cap where even that is slower than the slowest', () => {
    const tapped = speed({ operation: 'tap', diameters: [inch('.25')], lathe: { speedsRpm: [210] } });
    expect(saySpeed(tapped)).toBe('the slowest it has, and too fast: 120 is right');
    expect(sayTooFast(tapped)).toContain('faster than the 120 rpm');
  });

  test('carbide without a figure of its own says that high-speed steel stands in', () => {
    expect(sayStandIn(speed({ material: acetal, cuttingTool: 'carbide' }))).toMatch(
      /high-speed steel stands in/,
    );
    expect(sayStandIn(speed({ material: titanium, cuttingTool: 'carbide' }))).toBe('');
  });
});

describe('read aloud', () => {
  test('forty-six thou left, dial in fifteen', () => {
    expect(spokenProgress(at('1.544'), 'in')).toBe('Forty-six thou left. Dial in fifteen, on radius.');
  });

  test('the dial keeps its own unit beside a size in millimetres, and names it', () => {
    expect(spokenProgress(at('1.544'), 'mm', 'in')).toBe(
      'One point one six eight millimetres left. Dial in fifteen thou, on radius.',
    );
  });

  test.each([
    { of: 'outside', dial: radius, word: 'Dial in', to: 'one turn and eighteen, on radius' },
    { of: 'bore', dial: radius, word: 'Dial out', to: 'one turn and eighteen, on radius' },
    { of: 'bore', dial: { ...radius, reads: 'diameter' }, word: 'Dial out', to: 'two turns and thirty-six' },
    {
      of: 'length',
      dial: { ...radius, slide: 'compound' },
      word: 'Feed in',
      to: 'two turns and thirty-six, compound',
    },
    {
      of: 'length',
      dial: { ...radius, marksPerTurn: 125, slide: 'lead-screw' },
      word: 'Feed in',
      to: 'one turn and one hundred eleven, lead-screw handwheel',
    },
  ] as const)('in the screen’s own words, $of: $word $to', ({ of, dial, word, to }) => {
    // .236 off the size; half of it, .118, on a dial that reads radius.
    const made = dialSetting({ of, dial, take: inch('.236') });
    if (!made.ok) throw new Error('between marks');
    expect(word.toLowerCase()).toBe(dialWord(made.value));
    expect(spokenDial(made.value, { unit: 'in', named: false })).toBe(`${word} ${to}.`);
    expect(spokenFurther(made.value, inch('.010'), { unit: 'in', named: false })).toBe(
      `${word} ten more, to ${to}.`,
    );
  });

  test.each([
    { of: 'outside', dial: radius, says: '.018 in on radius' },
    { of: 'bore', dial: { ...radius, reads: 'diameter' }, says: '.036 in' },
    { of: 'length', dial: radius, says: '.036 in' },
  ] as const)('.036 off an $of is counted as $says', ({ of, dial, says }) => {
    expect(sayOnDial({ of, dial, take: inch('.036') }, 'in')).toBe(says);
  });

  test('while nobody said which slide makes it, no setting is read out', () => {
    const made = dialSetting({ of: 'length', dial: { ...radius, slide: 'to-choose' }, take: inch('.236') });
    if (!made.ok) throw new Error('between marks');
    const choose = 'Choose on the screen which slide makes it.';
    expect(spokenDial(made.value, { unit: 'in', named: false })).toBe(choose);
    expect(spokenFurther(made.value, inch('.010'), { unit: 'in', named: true })).toBe(choose);
  });

  test('whole turns are said', () => {
    expect(spokenDial(setting('.236'), { unit: 'in', named: false })).toBe(
      'Dial in one turn and eighteen, on radius.',
    );
    expect(spokenDial(setting('.436'), { unit: 'in', named: true })).toBe(
      'Dial in two turns and eighteen thou, on radius.',
    );
  });

  test('the last pass is warned of, and to be measured after', () => {
    expect(spokenProgress(at('1.500'), 'in')).toBe(
      'Last pass. Two thou left. Dial in one, on radius. Then stop the spindle and measure it.',
    );
  });

  test('with everything dialled in it is to be measured', () => {
    const cut = cutProgress({ ...ring, passes: [pass('1.544', '.081')], dialledSince: inch('.046') });
    expect(spokenProgress(cut, 'in')).toBe('Forty-six thou left. Stop the spindle and measure it.');
  });

  test('to size it says the size, and where it can’t be proved to measure again', () => {
    expect(spokenProgress(at('1.498'), 'in')).toBe('To size, one point four nine eight inches.');
    expect(spokenProgress(at('1.4978', caliper), 'in')).toBe(
      'To size, one point four nine seven eight inches. Too close to call: measure it again.',
    );
  });

  test('past the limit it says stop first', () => {
    expect(spokenProgress(at('1.4968'), 'in')).toBe('Stop. Seven tenths of a thou past the limit.');
  });

  test('without a size it asks for one, and with no plan it points at the screen', () => {
    const { blank: _, ...unknown } = ring;
    expect(spokenProgress(cutProgress(unknown), 'in')).toBe('Stop the spindle and measure it first.');
    const narrow = cutProgress({
      ...ring,
      blank: inch('1.5433'),
      lower: inch('1.4976'),
      upper: inch('1.4984'),
    });
    expect(spokenProgress(narrow, 'in')).toBe(
      "Forty-five and three tenths thou left. The dial can't do it: look at the screen.",
    );
  });

  test('a target that is passed inside the limits is called reached', () => {
    const blank = cutProgress({ ...ring, blank: inch('1.4978') });
    expect(spokenProgress(blank, 'in')).toBe('The target is reached. Stop the spindle and measure it.');
  });

  test('stages without their figures still make a sentence', () => {
    const bare = { ...at('1.544'), present: undefined, left: undefined, next: undefined, past: undefined };
    const { present: _p, left: _l, next: _n, past: _a, ...rest } = bare;
    expect(spokenProgress({ ...rest, stage: 'over' }, 'in')).toBe('Stop.');
    expect(spokenProgress({ ...rest, stage: 'to-size' }, 'in')).toBe('To size.');
    expect(spokenProgress({ ...rest, stage: 'last-pass' }, 'in')).toBe(
      'Last pass. Then stop the spindle and measure it.',
    );
    expect(spokenProgress({ ...rest, stage: 'cutting' }, 'in')).toBe('Stop the spindle and measure it.');
  });
});

describe('numbers in words', () => {
  test.each([
    [0, 'zero'],
    [7, 'seven'],
    [19, 'nineteen'],
    [20, 'twenty'],
    [46, 'forty-six'],
    [99, 'ninety-nine'],
    [100, 'one hundred'],
    [101, 'one hundred one'],
    [125, 'one hundred twenty-five'],
    [999, 'nine hundred ninety-nine'],
    [1000, 'one thousand'],
    [12_345, 'twelve thousand three hundred forty-five'],
  ] as const)('%i is %s', (count, words) => {
    expect(wordsFor(count)).toBe(words);
  });

  test.each([
    ['.018', 'eighteen thou', 'eighteen'],
    ['.0005', 'half a thou', 'half a thou'],
    ['.0001', 'a tenth of a thou', 'a tenth of a thou'],
    ['.0004', 'four tenths of a thou', 'four tenths of a thou'],
    ['.0184', 'eighteen and four tenths thou', 'eighteen and four tenths'],
    ['.1255', 'one hundred twenty-five and a half thou', 'one hundred twenty-five and a half'],
    ['0', 'zero thou', 'zero'],
    ['-0.002', 'minus two thou', 'minus two'],
    ['1.0', 'one point zero zero zero inches', 'one point zero zero zero'],
    ['1.498', 'one point four nine eight inches', 'one point four nine eight'],
  ] as const)('%s in is %s, or %s behind a sentence that named the unit', (text, amount, bare) => {
    expect(spokenAmount(inch(text), 'in')).toBe(amount);
    expect(spokenBare(inch(text), 'in')).toBe(bare);
  });

  test('millimetres and sizes are read digit by digit, with no noughts behind what they need', () => {
    expect(spokenAmount(lengthOf('0.46 mm'), 'mm')).toBe('zero point four six millimetres');
    expect(spokenAmount(lengthOf('11.397 mm'), 'mm')).toBe('eleven point three nine seven millimetres');
    expect(spokenSize(inch('.4487'), 'in')).toBe('zero point four four eight seven inches');
    expect(spokenSize(lengthOf('25.4 mm'), 'mm')).toBe('twenty-five point four zero millimetres');
    expect(spokenSize(zero, 'in')).toBe('zero point zero zero zero inches');
  });

  test('no digit is left for a voice to misread', () => {
    for (const text of ['.0460', '1.498', '12.3456', '.0005'])
      for (const unit of ['in', 'mm'] as const)
        expect(spokenAmount(inch(text), unit) + spokenSize(inch(text), unit)).not.toMatch(/\d/);
  });
});

describe('the cautions at the lathe', () => {
  test('always name gloves, sleeves, guard, glasses, chuck key and the stopped spindle', () => {
    for (const word of ['gloves', 'sleeves', 'Guard', 'glasses', 'chuck key', 'Stop the spindle'])
      expect(LATHE_CAUTION).toContain(word);
    expect(latheCautions({ operation: 'turn' })).toEqual([LATHE_CAUTION]);
  });

  test('put the mandrel first for a ring, and for thin work of any kind', () => {
    const thin = ['Thin ring: hold it on a mandrel; the jaws spring it out of round.', LATHE_CAUTION];
    expect(latheCautions({ operation: 'ring' })).toEqual(thin);
    // Thin: less than .125 of wall or .063 of thickness (common practice).
    expect(latheCautions({ operation: 'turn', wall: inch('.1249') })).toEqual(thin);
    expect(latheCautions({ operation: 'turn', wall: inch('.125') })).toEqual([LATHE_CAUTION]);
    expect(latheCautions({ operation: 'face', thickness: inch('.0629') })).toEqual(thin);
    expect(latheCautions({ operation: 'face', thickness: inch('.063') })).toEqual([LATHE_CAUTION]);
  });
});
