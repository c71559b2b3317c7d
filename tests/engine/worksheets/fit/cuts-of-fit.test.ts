import { describe, expect, test } from 'vitest';
import { cutsOfFit } from '../../../../src/engine/worksheets/fit/cuts-of-fit.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { boreForPin, checkClearance, pinForBore } from '../../../../src/engine/fit/fit-check.ts';
import { fitLimits } from '../../../../src/engine/fit/fits.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const caliper = usualTools.find(({ id }) => id === 'digital-caliper');
const dial = { reads: 'diameter', graduation: inch('.0005') } as const;

type Given = { readonly bore?: string; readonly pin?: string; readonly tool?: typeof caliper };

// RC5 at 1/2 in: clearance .0012 to .0029 (ANSI B4.1, row .40 to .71)
function ways({ bore, pin, tool }: Given) {
  const found = fitLimits({ fitClass: 'RC5', nominal: inch('1/2') });
  if (!found.ok) throw new Error(found.refusal.code);
  const fit = found.value;
  const part = (size: string) => ({
    tightest: typedEstimate(inch(size), tool),
    loosest: typedEstimate(inch(size), tool),
  });
  const measuredBore = bore === undefined ? undefined : part(bore);
  const measuredPin = pin === undefined ? undefined : part(pin);
  return cutsOfFit(
    {
      fit,
      ...(measuredBore && { bore: measuredBore, pinForBore: pinForBore(fit, measuredBore) }),
      ...(measuredPin && { pin: measuredPin, boreForPin: boreForPin(fit, measuredPin) }),
      ...(measuredBore &&
        measuredPin && { verdict: checkClearance(fit, { bore: measuredBore, pin: measuredPin }).verdict }),
    },
    dial,
  );
}

describe('an RC5 fit at 1/2 in', () => {
  test('for a bore of .5050 has its pin made .5030', () => {
    // .5050 − .0029 = .5021; .5050 − .0012 = .5038; the middle .50295 left full to the half thou: .5030
    expect(waysSaid(ways({ bore: '.5050' }))).toEqual({ pin: ['Pin, made new: .5030 (.5021 to .5038)'] });
  });

  test('for a pin of .4985 has its bore cut .5005', () => {
    // .4985 + .0012 = .4997; .4985 + .0029 = .5014; the middle .50055 cut shy: .5005
    expect(waysSaid(ways({ pin: '.4985' }))).toEqual({ bore: ['Bore, to size: .5005 (.4997 to .5014)'] });
  });

  test('that is too tight has its pin turned down or its bore opened', () => {
    // .5005 − .5000 = .0005. Pin .4976 to .4993, middle .49845: .4985. Bore .5012 to .5029, middle .50205: .5020
    expect(waysSaid(ways({ bore: '.5005', pin: '.5000' }))).toEqual({
      pin: ['Pin, turned down: .5000 → .4985 (.4976 to .4993)'],
      bore: ['Bore, opened: .5005 → .5020 (.5012 to .5029)'],
    });
  });

  test('that is too loose has its pin made new; no cut makes the bore smaller', () => {
    // .5050 − .4985 = .0065
    expect(waysSaid(ways({ bore: '.5050', pin: '.4985' }))).toEqual({
      pin: ['Pin, made new: .5030 (.5021 to .5038)'],
    });
  });

  test('that is good takes no cut', () => {
    // .5005 − .4985 = .0020
    expect(ways({ bore: '.5005', pin: '.4985' })).toEqual([]);
  });

  test('with nothing measured takes no cut', () => {
    expect(ways({})).toEqual([]);
  });

  test('read with a caliper has no limits that are sure, and says so', () => {
    const [way] = ways({ bore: '.5050', tool: caliper });
    expect(way?.offers[0]?.limitsFrom).toMatch(
      /^ANSI B4\.1, RC5.*; the readings are too coarse to be sure of any$/,
    );
  });
});
