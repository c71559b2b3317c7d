import { describe, expect, test } from 'vitest';
import { typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import {
  lineUp,
  inWorkOrder,
  type LineUpAnswer,
} from '../../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { usualTools, type ToolInForce } from '../../../../src/engine/reading/measuring-tool.ts';
import { lineUpVerdict } from '../../../../src/engine/worksheets/axle-line-up/say-line-up.ts';
import { axleLayouts } from '../../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';

// What is cut is measured again when its size is given back: what that tool may be off is counted before the limits are shared.

const inch = (text: string) => lengthOf(`${text} in`);
const tool = (id: string): ToolInForce => {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};
/** A caliper that may be off by .001 in. */
const caliper = { ...tool('digital-caliper'), mpe: inch('.001') };

const machine = (more: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries({
      width: '6.750',
      hub: '4.412',
      centre: '2.300',
      disc: '.312',
      slot: '.187',
      bracket: '.500',
      float: '.010',
      slotWidth: '.300',
      discThickness: '.160',
      ...more,
    }).map(([name, size]) => [name, typedEstimate(inch(size))]),
  );

type Asked = {
  readonly sizes?: Readonly<Record<string, string>>;
  readonly onHand?: Readonly<Record<string, Estimate>>;
};

function asked(
  { sizes = {}, onHand = {} }: Asked,
  readWith: ToolInForce,
  limits = usualLineUpLimits.in,
): LineUpAnswer {
  const result = lineUp({
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    sizes: machine(sizes),
    onHand,
    limits,
    cutReadWith: readWith,
    step: inch('.001'),
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

/** Cut in the order of work, each measured at one end of its limits or where it was aimed at. */
function cutAll(
  more: Asked,
  readWith: ToolInForce,
  ends: readonly ('lower' | 'to' | 'upper')[],
  limits = usualLineUpLimits.in,
) {
  let onHand: Readonly<Record<string, Estimate>> = {};
  const names = inWorkOrder(asked(more, readWith, limits)).map(({ name }) => name);
  for (const [index, name] of names.entries()) {
    const deed = asked({ ...more, onHand }, readWith, limits).spacers.find((one) => one.name === name)?.deed;
    if (deed?.kind !== 'make' || !deed.make.ok) return { end: `${name} ${deed?.kind ?? ''}`, onHand };
    const size: Length = deed.make.value[ends[index] ?? 'to'];
    onHand = { ...onHand, [name]: typedEstimate(size, readWith) };
  }
  return { end: lineUpVerdict(asked({ ...more, onHand }, readWith, limits)), onHand };
}

const WAYS = ['lower', 'to', 'upper'] as const;
const every = WAYS.flatMap((a) =>
  WAYS.flatMap((b) => WAYS.flatMap((c) => WAYS.map((d) => [a, b, c, d] as const))),
);

describe('parts cut in the order of work, each measured by a caliper that may be off .001', () => {
  test.each([
    { sizes: {} },
    { sizes: { width: '6.7513', hub: '4.4117' } },
    { sizes: { disc: '.3127', slot: '.1861' } },
  ])('anywhere inside their limits end good, all 81 ways ($sizes)', ({ sizes }) => {
    for (const ends of every) expect(cutAll({ sizes }, caliper, ends).end).toBe('good');
  });

  test('would not all be good at limits that were shared as if nothing had to be measured', () => {
    const exact = { ...caliper, mpe: inch('0'), resolution: inch('0'), repeatability: inch('0') };
    const ends = every.map((way) => {
      const { onHand } = cutAll({}, exact, way);
      const read = Object.fromEntries(
        Object.entries(onHand).map(([name, { sum }]) => [name, typedEstimate(sum, caliper)]),
      );
      return lineUpVerdict(asked({ onHand: read }, caliper));
    });
    expect(ends).toContain('too-close');
  });

  test('with limits that this caliper can’t prove say so before the first cut, and the figures stand', () => {
    // Float ±.001 by four parts, each known to no more than .001.
    const tight = {
      ...usualLineUpLimits.in,
      spacer: { by: inch('.001'), source: 'your own limit' },
    };
    const answer = asked({}, caliper, tight);
    expect(lineUpVerdict(answer)).toBe('too-close');
    const close = asked(
      {},
      { ...tool('micrometer-0-1'), mpe: inch('.00005'), least: inch('0'), most: inch('10') },
      tight,
    );
    expect(lineUpVerdict(close)).toBe('good');
    expect(answer.spacers.every(({ deed }) => deed.kind === 'make' && deed.make.ok)).toBe(true);
    expect(
      answer.spacers.some(({ deed }) => deed.kind === 'make' && deed.make.ok && deed.make.value.unproved),
    ).toBe(true);
  });
});
