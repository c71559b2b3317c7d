import { describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import type { MeasuredPart } from '../../../src/engine/fit/fit-check.ts';
import { decimalText, lengthOf, type Length } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import { sayWayOut } from '../../../src/engine/ways-out/say-cuts-ways.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';
import { waysOut, type WaysOutQuestion } from '../../../src/engine/ways-out/ways-out.ts';
import type { WayOut, WayOutKind } from '../../../src/engine/ways-out/ways-out-kinds.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length) => decimalText(length, 'in', 4);
const [caliper] = usualTools;
const steel = materialNamed('low-carbon-steel');
if (!caliper || !steel) throw new Error('the tables are empty');
const micrometer: MeasuringTool = {
  ...caliper,
  id: 'tenths',
  name: 'tenths micrometer',
  measures: ['bore', 'pin', 'length', 'depth', 'gap'],
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  repeatability: inch('.00005'),
};
const rough: MeasuringTool = {
  ...micrometer,
  id: 'rough',
  name: 'caliper',
  mpe: inch('.001'),
  repeatability: inch('.0002'),
};

function part(size: string): MeasuredPart {
  const estimate = typedEstimate(inch(size), micrometer);
  return { tightest: estimate, loosest: estimate };
}

/** A bore for a .4988 pin, cut to .5003 to .5013 for RC5, and gone to .5022. */
const bore: WaysOutQuestion = {
  of: 'bore',
  operation: 'bore',
  present: inch('.5022'),
  tool: micrometer,
  tools: [micrometer],
  target: inch('.5006'),
  lower: inch('.5003'),
  upper: inch('.5013'),
  limitsFrom: 'ANSI B4.1, RC5',
  step: inch('.001'),
  finish: inch('.012'),
  mate: part('.4988'),
  fitClass: 'RC5',
  wall: inch('.400'),
  partMetal: steel,
};

/** A shaft for a .5001 bore, cut to .4980 to .4988, and gone to .4960. */
const shaft: WaysOutQuestion = {
  ...bore,
  of: 'outside',
  operation: 'turn',
  present: inch('.4960'),
  target: inch('.4985'),
  lower: inch('.4980'),
  upper: inch('.4988'),
  mate: part('.5001'),
};

/** A spacer cut to .372 that was to be .377. */
const spacer: WaysOutQuestion = {
  ...bore,
  of: 'length',
  operation: 'face',
  present: inch('.372'),
  target: inch('.377'),
  lower: inch('.376'),
  upper: inch('.378'),
};

function ways(q: WaysOutQuestion): readonly WayOut[] {
  const out = waysOut(q);
  if (!out) throw new Error('it is not past its limit');
  return out.ways;
}

function way<Kind extends WayOutKind>(q: WaysOutQuestion, kind: Kind): Extract<WayOut, { kind: Kind }> {
  const found = ways(q).find((one): one is Extract<WayOut, { kind: Kind }> => one.kind === kind);
  if (!found) throw new Error(`no ${kind}`);
  return found;
}

function open(q: WaysOutQuestion, kind: WayOutKind) {
  const found: WayOut = way(q, kind);
  if (found.state === 'out') throw new Error(`${kind} is out: ${found.why.code}`);
  return found;
}

function reason(q: WaysOutQuestion, kind: WayOutKind): string {
  const found: WayOut = way(q, kind);
  return found.state === 'out' ? found.why.code : 'open';
}

const said = (q: WaysOutQuestion, kind: WayOutKind) => sayWayOut(way(q, kind), 'in');

describe('the ways out', () => {
  test('are none for a size that is at its limit, and some a tenth past it', () => {
    expect(waysOut({ ...bore, present: inch('.5013') })).toBeUndefined();
    const out = waysOut({ ...bore, present: inch('.5014') });
    expect(out && [shown(out.limit), shown(out.past)]).toEqual(['0.5013', '0.0001']);
  });

  test('come with the fewest steps that can’t be undone first, a new part last, and those ruled out behind it', () => {
    expect(ways({ ...bore, present: inch('.5014') }).map(({ kind, state }) => `${state} ${kind}`)).toEqual([
      'open measure-again',
      'open next-class',
      'open new-mate',
      'open bush',
      'open new-part',
    ]);
    expect(ways(bore).map(({ kind, state }) => `${state} ${kind}`)).toEqual([
      'open next-class',
      'open new-mate',
      'open bush',
      'open new-part',
      'out measure-again',
    ]);
    expect(ways(shaft).map(({ kind }) => kind)).toEqual([
      'next-class',
      'new-mate',
      'sleeve',
      'new-part',
      'measure-again',
    ]);
  });

  test('of a length, a depth or a width are a shim, of a drilled hole only a new part', () => {
    for (const of of ['recess-depth', 'slot-depth', 'slot-width'] as const)
      expect(ways({ ...bore, of }).map(({ kind }) => kind)).toEqual(['shim', 'new-part', 'measure-again']);
    expect(ways(spacer).map(({ kind }) => kind)).toEqual(['shim', 'new-part', 'measure-again']);
    expect(ways({ ...bore, of: 'tap-drill' }).map(({ kind }) => kind)).toEqual(['new-part', 'measure-again']);
  });
});

describe('measuring again', () => {
  test('comes first while the tool could have erred by as much as it is past', () => {
    const close = { ...bore, present: inch('.5014'), tool: rough, tools: [rough, micrometer] };
    const again = way(close, 'measure-again');
    expect(again.state).toBe('open');
    expect(sayWayOut(again, 'in').what).toMatch(
      /^The tool knows it only to ±\.0012, so it may be inside yet\. /,
    );
  });

  test('is out where it is past by more, with both figures', () => {
    // A tenth of error, .00005 of scatter: U = 1.96 √(.00005² + .0001² / 3) = .00015.
    expect(said(bore, 'measure-again').what).toBe(
      "It is past by .0009 in and the tool knows it to ±.00015: measuring again won't bring it back.",
    );
  });

  test('names the tool that would settle it, or that none can', () => {
    const at = { ...bore, present: inch('.5016'), tool: rough };
    expect(said({ ...at, tools: [rough, micrometer] }, 'measure-again').what).toContain(
      'The tenths micrometer with 1 reading would settle it',
    );
    expect(said({ ...at, tools: [] }, 'measure-again').what).toContain('No tool in Shop can settle it.');
  });

  test('is always a way where no measuring tool was named', () => {
    const { tool: _, ...unnamed } = bore;
    expect(reason(unnamed, 'measure-again')).toBe('open');
    expect(said(unnamed, 'measure-again').what).toBe(
      'No measuring tool is named: measure it with one that is known before anything is cut.',
    );
  });
});

describe('keeping it in another class', () => {
  test('takes the next RC class the pair keeps: .0034 is past RC5 (.0012 to .0029), inside RC6 (.0012 to .0038)', () => {
    // ANSI B4.1, over 0.40 to 0.71 in.
    expect(said(bore, 'next-class')).toEqual({
      title: 'Keep it, as RC6',
      what: '.0034 ±.00021 between them; RC6 wants .0012 to .0038 of clearance: medium running, wider limits.',
      caution: 'It runs looser than was meant: see that the joint may have it.',
    });
  });

  test('keeps the class it was cut for where the mate makes up for it: .5014 less .4988 is .0026', () => {
    const still = said({ ...bore, present: inch('.5014') }, 'next-class');
    expect(still.title).toBe('Keep it: still RC5 with its mate');
    expect(still).not.toHaveProperty('caution');
  });

  test('of a shaft goes by the bore less the shaft: .0041 is in RC7 (.0020 to .0046), not in RC6', () => {
    expect(said(shaft, 'next-class').title).toBe('Keep it, as RC7');
  });

  test('says where it is too close to call', () => {
    // .5025 less .4988 is .0037, a tenth inside RC6’s .0038.
    const close = said({ ...bore, present: inch('.5025') }, 'next-class');
    expect(close.title).toBe('Keep it, as RC7');
    // RC9, the widest, ends at .0128; .5115 less .4988 is .0127.
    const edge = said({ ...bore, present: inch('.5115') }, 'next-class');
    expect(edge.title).toBe('Keep it, as RC9');
    expect(edge.what).toMatch(/Too close to call: measure both again\.$/);
  });

  test('in ISO takes the next looser one that runs: 12.72 less 12.67 mm from H8/e8 (.032 to .086) stays, .10 is H9/d9', () => {
    // ISO 286-1, over 10 to 18 mm: H9/d9 is .050 to .136.
    const iso = {
      ...bore,
      fitClass: 'H8/e8',
      mate: part('.4988'),
      target: inch('.5010'),
      upper: inch('.5020'),
    };
    expect(said({ ...iso, present: inch('.5027') }, 'next-class').title).toBe('Keep it, as H9/d9');
  });

  test('of a press fit stays one that grips', () => {
    // .5007 less .5003 is .0004 of grip: less than FN2’s .0007 to .0016, inside FN1’s .0001 to .0008 (ANSI B4.1, 0.40 to 0.56 in).
    const press = {
      ...bore,
      fitClass: 'FN2',
      target: inch('.4992'),
      lower: inch('.4990'),
      upper: inch('.4994'),
      present: inch('.5003'),
      mate: part('.5007'),
    };
    const kept = open(press, 'next-class');
    expect(kept.kind === 'next-class' && kept.fit.fitClass).toBe('FN1');
  });

  test('is out where no class of the kind has so much room, and where the mate is not known', () => {
    expect(reason({ ...bore, present: inch('.5200') }, 'next-class')).toBe('no-class-met');
    expect(said({ ...bore, present: inch('.5200') }, 'next-class').what).toBe(
      '.0212 in between them is in no class of ANSI B4.1 of this kind.',
    );
    expect(said({ ...bore, fitClass: 'H8/e8', present: inch('.5200') }, 'next-class').what).toBe(
      '.0212 in between them is in no class of ISO 286 of this kind.',
    );
    const { mate: _, ...alone } = bore;
    expect(said(alone, 'next-class')).toEqual({
      title: 'Keep it, in another class',
      what: 'The size of the part it runs with is not known. Measure that first.',
    });
  });

  test('is out where the class in force is no class of that size', () => {
    expect(reason({ ...bore, fitClass: 'RC99' }, 'next-class')).toBe('no-such-class');
    expect(reason({ ...bore, fitClass: 'H7/t6' }, 'next-class')).toBe('class-not-at-size');
  });

  test('goes by the joint’s usual class where none is named, and by the target where no joint is known', () => {
    const { fitClass: _, ...unnamed } = bore;
    const kept = (q: WaysOutQuestion) => {
      const found = open(q, 'next-class');
      return found.kind === 'next-class' && found.fit.system + ' ' + found.fit.fitClass;
    };
    expect(kept(unnamed)).toBe('ansi RC6');
    expect(kept({ ...unnamed, joint: 'slides' })).toBe('ansi RC6');
    expect(kept({ ...unnamed, system: 'iso' })).toBe('iso H9/d9');
    const grips = { target: inch('.4992'), lower: inch('.4990'), upper: inch('.4994'), mate: part('.5007') };
    expect(kept({ ...unnamed, ...grips, present: inch('.5003') })).toBe('ansi FN1');
    const onShaft = { ...unnamed, of: 'outside', operation: 'turn', target: inch('.5020') } as const;
    const tight = { ...onShaft, lower: inch('.5018'), upper: inch('.5022'), mate: part('.5000') };
    expect(kept({ ...tight, present: inch('.5004') })).toBe('ansi FN1');
  });
});

describe('the other part made to suit', () => {
  test('is a larger pin for a bore: .5022 less RC5’s .0012 to .0029', () => {
    expect(said(bore, 'new-mate')).toEqual({
      title: 'Make a larger pin',
      what: 'Pin .4993 to .5010 in for RC5.',
    });
  });

  test('is a smaller bore for a shaft: .4960 and RC5’s .0012 to .0029', () => {
    expect(said(shaft, 'new-mate')).toEqual({
      title: 'Make a smaller bore for it',
      what: 'Bore .4972 to .4989 in for RC5.',
    });
  });

  test('says where no size in it could be proved with these readings', () => {
    const blunt = { ...rough, mpe: inch('.003') };
    expect(said({ ...bore, tool: blunt, present: inch('.5080') }, 'new-mate').what).toMatch(
      /; no size in it can be proved with these readings\.$/,
    );
  });

  test('is out where the mate is not known or the class is none', () => {
    const { mate: _, ...alone } = bore;
    expect(reason(alone, 'new-mate')).toBe('mate-not-known');
    expect(reason({ ...bore, fitClass: 'RC99' }, 'new-mate')).toBe('no-such-class');
  });
});

describe('bushing it', () => {
  test('opens it to the next reamer with a wall for the bushing, and tells both walls', () => {
    // Inside .4988 + .0029 = .5017, less what the pin's readings can't tell, 1.96 · √(.00005² + .0001²/3) = .00015: .50155;
    // two walls of .060 make .62155, so 5/8. Part: .400 − (.625 − .5022) / 2 = .3386.
    const bushed = open(bore, 'bush');
    if (bushed.kind !== 'bush') throw new Error(bushed.kind);
    expect([bushed.openTo, bushed.takes, bushed.wall].map(shown)).toEqual(['0.6250', '0.1228', '0.0617']);
    expect(bushed.partWall && shown(bushed.partWall)).toBe('0.3386');
    // FN1 at 5/8: pin +.0006 to +.0009 (ANSI B4.1, over 0.56 to 0.71: .6256 to .6259 to the tables).
    expect([bushed.outside.lower, bushed.outside.upper].map(shown)).toEqual(['0.6256', '0.6259']);
    expect([bushed.inside.lower, bushed.inside.upper].map(shown)).toEqual(['0.5001', '0.5016']);
    expect([bushed.irreversibleSteps, bushed.metalAssumed]).toEqual([2, false]);
    expect(said(bore, 'bush').what).toMatch(
      /^Open the bore to \.625 in \(\.1228 more, \.3386 in left round it\); bushing outside \.6256 to \.6259 in for FN1, inside \.5002 to \.5015 in for RC5, wall \.0617 in\. /,
    );
    expect(said(bore, 'bush').caution).toBe(
      'A bushing gives the size back, not the metal that was round the hole.',
    );
  });

  test('judges no stress and no heat where the part’s metal is not known, and says so', () => {
    const { partMetal: _, ...unknown } = bore;
    const { what } = said(unknown, 'bush');
    expect(what).toContain('The part’s metal is not known: stress, force and heat are not judged.');
    expect(what).not.toMatch(/takes a set|Neither heat nor cold|low carbon steel/);
    expect(said(bore, 'bush').what).toContain('Judged for a bushing of bearing bronze.');
    expect(said(bore, 'bush').what).toContain('The bushing takes a set');
  });

  test('is worked out without a wall too, which is then not told', () => {
    const { wall: _, ...noWall } = bore;
    expect(open(noWall, 'bush')).not.toHaveProperty('partWall');
    expect(said(noWall, 'bush').what).toContain('(.1228 more); bushing');
  });

  test('is out where too little is left round the hole, or the bore would break through, with the figures', () => {
    expect(reason({ ...bore, wall: inch('.100') }, 'bush')).toBe('bushing-warned');
    expect(said({ ...bore, wall: inch('.100') }, 'bush').what).toContain('.0386 in is left round the hole');
    expect(reason({ ...bore, wall: inch('.050') }, 'bush')).toBe('breaks-through');
    expect(said({ ...bore, wall: inch('.050') }, 'bush').what).toContain('breaks through the part’s edge');
  });

  test('is out where the mate is not known', () => {
    const { mate: _, ...alone } = bore;
    expect(reason(alone, 'bush')).toBe('mate-not-known');
  });

  test('takes the bore’s length and another bushing metal into account', () => {
    expect(said({ ...bore, depth: inch('1'), bushingMetal: steel }, 'bush').what).toContain(
      'where Low carbon steel (1018, 1020) yields',
    );
    expect(said(bore, 'bush').what).toContain('where Bearing bronze SAE 660 (C93200) yields');
  });
});

describe('a sleeve on the shaft', () => {
  test('has its wall above the shaft turned down for it, and is turned to the shaft’s own limits', () => {
    // Slides at .4985: .0003 to .0012 (common practice). .4980 − .040 − .0012 = .4568, down to .456.
    // A quarter of the room, .000225, either way for the shaft; sleeve .456225 + .0003 to .455775 + .0012; wall (.4980 − .456975) / 2.
    const sleeved = open(shaft, 'sleeve');
    if (sleeved.kind !== 'sleeve') throw new Error(sleeved.kind);
    expect(sleeved.turnTo && shown(sleeved.turnTo)).toBe('0.4560');
    expect([sleeved.inside.lower, sleeved.inside.upper, sleeved.wall].map(shown)).toEqual([
      '0.4565',
      '0.4570',
      '0.0205',
    ]);
    expect([sleeved.outside.lower, sleeved.outside.upper].map(shown)).toEqual(['0.4980', '0.4988']);
    expect(sleeved.irreversibleSteps).toBe(1);
    expect(said(shaft, 'sleeve').what).toBe(
      'Turn the shaft to .456 in (.4558 to .4562). Sleeve: inside .4566 to .4569, outside .4980 to .4988 in once it is bonded, wall .0205 in.',
    );
  });

  test('goes on a shaft that is small enough as it is, with nothing more to cut', () => {
    const small = { ...shaft, present: inch('.4550') };
    const sleeved = open(small, 'sleeve');
    expect(sleeved).not.toHaveProperty('turnTo');
    expect(sleeved.irreversibleSteps).toBe(0);
    expect(said(small, 'sleeve').what).toMatch(/^Sleeve: inside \.4553/);
  });

  test('is out under nine tenths of the shaft, with the figures, and on a ring', () => {
    const thin = {
      ...shaft,
      target: inch('.200'),
      lower: inch('.1995'),
      upper: inch('.2005'),
      present: inch('.198'),
    };
    expect(said(thin, 'sleeve').what).toBe(
      'The shaft would have to be turned to .158 in, and .180 in is the least (nine tenths of the pin, common practice, no source).',
    );
    expect(reason({ ...shaft, operation: 'ring' }, 'sleeve')).toBe('no-sleeve-on-ring');
    expect(said({ ...shaft, operation: 'ring' }, 'sleeve').what).toBe(
      'A ring is made new sooner than it is sleeved.',
    );
  });

  test('is still one at just nine tenths', () => {
    // .4050 − .040 − .0012 bond = .3638 → .363 on a dial of .001; nine tenths of .4033 is .36297, of .4034 .36306.
    const at = { ...shaft, lower: inch('.4050'), upper: inch('.4060'), present: inch('.404') };
    expect(reason({ ...at, target: inch('.4033') }, 'sleeve')).toBe('open');
    expect(reason({ ...at, target: inch('.4034') }, 'sleeve')).toBe('core-too-thin');
  });
});

describe('a shim', () => {
  const piece = (size: string, count = 1) => ({
    id: size,
    name: `shim ${size}`,
    thickness: typedEstimate(inch(size), micrometer),
    count,
  });

  test('is what is missing of a length cut too short: .005, from .004 to .006', () => {
    expect(said(spacer, 'shim').what).toBe('.005 in is missing: shim .004 to .006 in.');
  });

  test('is what is too much of a depth: .5022 where .5006 was wanted, .0009 to .0019', () => {
    expect(said({ ...bore, of: 'recess-depth' }, 'shim').what).toBe(
      '.0016 in is missing: shim .0009 to .0019 in.',
    );
  });

  test('is picked from the drawer, as near as it comes, or none where there is none', () => {
    const from = (...drawer: ReturnType<typeof piece>[]) => said({ ...spacer, drawer }, 'shim').what;
    expect(from(piece('.0025', 2))).toContain('From the drawer: 2 × .0025, together .005 in.');
    expect(from(piece('.002'))).toContain(
      'Nothing in the drawer fits; nearest .002, together .002 in, .003 in too thin.',
    );
    expect(from(piece('.009'))).toContain('.004 in too thick.');
    expect(from()).toContain('The drawer holds no shim or washer with a thickness.');
  });
});

describe('a new part', () => {
  test.each([
    ['outside', shaft, 'with an outside of at least .5105 in'],
    ['length', spacer, 'with a length of at least .389 in'],
    ['bore', bore, 'with a hole of at most .4886 in'],
    ['tap-drill', { ...bore, of: 'tap-drill' }, 'with a hole of at most .4886 in'],
    ['recess-depth', { ...bore, of: 'recess-depth' }, 'with a recess no deeper than .4886 in'],
    ['slot-depth', { ...bore, of: 'slot-depth' }, 'with a slot no deeper than .4886 in'],
    ['slot-width', { ...bore, of: 'slot-width' }, 'with a slot no wider than .4886 in'],
  ] as const)('%s starts from a blank with .012 of metal on the target', (_of, q, blank) => {
    expect(said(q, 'new-part').what).toBe(
      `Start from a blank ${blank}, which leaves .012 in for the finishing passes.`,
    );
  });
});

test('a sentence in millimetres names them', () => {
  expect(sayWayOut(way(spacer, 'shim'), 'mm').what).toBe('0.127 mm is missing: shim 0.102 to 0.152 mm.');
});
