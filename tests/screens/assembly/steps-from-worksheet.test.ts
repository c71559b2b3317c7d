import { describe, expect, test } from 'vitest';
import { stepsFromWorksheet } from '../../../src/screens/assembly/steps-from-worksheet.ts';
import { partOf, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

const named = (order: number, name: string, count = 1) => ({
  ...partOf(order, typedSize('.250')),
  name,
  count,
});

describe('the steps of a stack', () => {
  const parts = { c: named(3, 'shim', 2), a: named(1, 'washer'), b: named(2, 'spacer') };
  const steps = stepsFromWorksheet(
    worksheetOf('spacer-stack', {
      sizes: { fixed: typedSize('1.010') },
      parts,
      choices: { fixedName: 'sleeve' },
    }),
  );

  test('begin with the whole order and its drawing', () => {
    expect(steps[0]).toEqual({
      text: 'Stack in this order, from the left on the sleeve: washer, spacer, shim (2 pieces)',
      worksheetId: 'sheet',
    });
  });

  test('are one for each part from left to right, with what it sits between', () => {
    expect(steps.slice(1)).toEqual([
      { text: 'Fit the washer', orientation: 'first from the left, before the spacer' },
      { text: 'Fit the spacer', orientation: 'between the washer and the shim (2 pieces)' },
      { text: 'Fit the shim (2 pieces)', orientation: 'last, after the spacer' },
    ]);
  });

  test('of parts that have only a number are called by it', () => {
    const numbered = { a: named(1, 'part 1'), b: named(2, 'part 2', 2) };
    expect(
      stepsFromWorksheet(
        worksheetOf('spacer-stack', { sizes: { fixed: typedSize('1.010') }, parts: numbered }),
      ).slice(1),
    ).toEqual([
      { text: 'Fit part 1', orientation: 'first from the left, before part 2 (2 pieces)' },
      { text: 'Fit part 2 (2 pieces)', orientation: 'last, after part 1' },
    ]);
  });

  test('of one part alone say that it is alone', () => {
    const lone = stepsFromWorksheet(
      worksheetOf('spacer-stack', { sizes: { fixed: typedSize('1.010') }, parts: { a: named(1, 'washer') } }),
    );
    expect(lone[1]).toEqual({ text: 'Fit the washer', orientation: 'alone' });
  });

  test('are none while it has no part', () => {
    expect(stepsFromWorksheet(worksheetOf('spacer-stack'))).toEqual([]);
  });
});

describe('the steps of an axle', () => {
  const sizes = {
    width: typedSize('6.750'),
    hub: typedSize('4.412'),
    centre: typedSize('2.300'),
    disc: typedSize('.312'),
    slot: typedSize('.187'),
    bracket: typedSize('.500'),
    float: typedSize('.010'),
  };
  const choices = { layout: 'front-one-disc', side: 'right' };
  const steps = stepsFromWorksheet(worksheetOf('axle-line-up', { sizes, choices }));

  test('go from leg to leg with the lengths of the spacers, and leave the float out: it is room, not a part', () => {
    // A = 6.750/2 − 2.300 = 1.075; B = .312 − .187 − .005 = .120; C = 6.750 − 1.075 − 4.412 − .120 − .500 − .010 = .633
    expect(steps.map(({ text }) => text)).toEqual([
      'Stack in this order, from the left between the legs: left spacer, hub, spacer B (hub to bracket), bracket, spacer C (bracket to leg)',
      'Fit the left spacer, 1.075 in',
      'Fit the hub',
      'Fit spacer B (hub to bracket), .120 in',
      'Fit the bracket',
      'Fit spacer C (bracket to leg), .633 in',
      // The sleeve fills what the left spacer and the hub leave: 6.750 − 1.075 − 4.412.
      'Put the sleeve through its bracket, 1.263 in',
      'Tighten the axle nut',
      'Turn the wheel: it runs free, the brake lets go',
    ]);
  });

  test('name the lengths the parts will have: left full to the dial, or as measured', () => {
    // W = 6.7484: A = 1.0742, cut to 1.075; inner one on hand .122, kept; C = 1.2622 − .122 − .500 − .010 = .6302, to .631.
    const given = { ...sizes, width: typedSize('6.7484'), 'onHand-inner': typedSize('.122') };
    const texts = stepsFromWorksheet(worksheetOf('axle-line-up', { sizes: given, choices })).map(
      ({ text }) => text,
    );
    expect(texts).toContain('Fit the left spacer, 1.075 in');
    expect(texts).toContain('Fit spacer B (hub to bracket), .122 in');
    expect(texts).toContain('Fit spacer C (bracket to leg), .631 in');
  });

  test('measure the others and cut what is cut last before anything is stacked', () => {
    // No step of a dial of .005 lies within .0016 of the sleeve's 1.263.
    const data = worksheetOf('axle-line-up', { sizes, choices });
    const coarse = { ...data, dial: { ...data.dial, graduation: typedSize('.005') } };
    const texts = stepsFromWorksheet(coarse).map(({ text }) => text);
    expect(texts[0]).toBe('Measure sleeve and hub to bracket; cut bracket to leg last, to them');
    expect(texts).toContain('Fit spacer C (bracket to leg)');
  });

  test('ask for the manual’s torque of the axle nut, and state none', () => {
    expect(steps.find(({ torque }) => torque)).toEqual({
      text: 'Tighten the axle nut',
      torque: { typed: '', unit: 'lbf-ft', source: '' },
    });
    const metric = stepsFromWorksheet(worksheetOf('axle-line-up', { sizes, choices, unit: 'mm' }));
    expect(metric.find(({ torque }) => torque)?.torque?.unit).toBe('Nm');
  });

  test('are none while a size is missing', () => {
    const { hub: _hub, ...others } = sizes;
    expect(stepsFromWorksheet(worksheetOf('axle-line-up', { sizes: others, choices }))).toEqual([]);
  });
});

describe('the steps of an insert', () => {
  const insert = worksheetOf('thread-insert', { choices: { thread: '7/16-20 UNF', metal: 'aluminium' } });

  test('clean the hole, wind it in below the face, break the tang off', () => {
    const steps = stepsFromWorksheet(insert);
    expect(steps.map(({ text }) => text)).toEqual([
      'Clean the tapped hole, no chip and no oil in it',
      'Wind the 7/16-20 UNF insert in',
      'Break the tang off and take it out of the hole',
    ]);
    // 0.75 and 1.5 pitches of 1/20 in (ASME B18.29.1): .0375 and .075.
    expect(steps[1]?.orientation).toBe('its first turn .0375 in to .075 in below the face');
  });

  test('are none while no thread is chosen', () => {
    expect(stepsFromWorksheet(worksheetOf('thread-insert'))).toEqual([]);
  });
});

describe('the steps of a bushing', () => {
  const bushed = (bore: string, choices: Readonly<Record<string, string>> = {}) =>
    stepsFromWorksheet(
      worksheetOf('bushing', {
        sizes: { bore: typedSize(bore), pin: typedSize('.4372') },
        choices: {
          joint: 'turns',
          partMetal: 'low-carbon-steel',
          bushingMetal: 'bearing-bronze',
          ...choices,
        },
      }),
    ).map(({ text }) => text);

  test('drop it in cold where the shop can get it cold enough, and measure the bore once it is warm again', () => {
    // 1 in of nitrogen-cooled bronze shrinks by 216 °C × 17e-6 × 1 in = .0037 in, more than .001 in of room and the
    // largest interference of a locational fit beside it.
    const steps = bushed('.990', { cold: 'nitrogen' });
    expect(steps[0]).toBe('Deburr and clean the reamed bore and the bushing');
    expect(steps[1]).toMatch(/^(Heat the part|Cool the bushing) to .* and drop the bushing in$/);
    expect(steps[2]).toBe('Let it come back to shop temperature, then measure the bore again');
  });

  test('press it in where a small bore would have to be too hot', () => {
    // At 1/2 in the same .0035 would take .0035 / .5 / 12e-6 = 583 °C.
    expect(bushed('.4487')[1]).toBe('Press the bushing in, square and in one go');
  });

  test('are none while a metal is missing', () => {
    expect(bushed('.4487', { bushingMetal: '' })).toEqual([]);
  });
});

test('a worksheet that only judges gives no steps', () => {
  expect(stepsFromWorksheet(worksheetOf('fit'))).toEqual([]);
});

test('a bushing that is dropped in hot or cold asks for insulated gloves', () => {
  const sizes = { bore: typedSize('.5050'), pin: typedSize('.5000'), wall: typedSize('.400') };
  const steps = stepsFromWorksheet(
    worksheetOf('bushing', {
      sizes,
      choices: {
        joint: 'turns-under-load',
        partMetal: 'low-carbon-steel',
        bushingMetal: 'bearing-bronze',
        cold: 'nitrogen',
      },
    }),
  );
  expect(steps.find(({ text }) => text.endsWith('drop the bushing in'))?.orientation).toMatch(
    /^insulated gloves on/,
  );
});
