import { marked } from '../../length/decimal-text.ts';
import { lengthOf, roundForShow, zero, type Length } from '../../length/length.ts';
import { showBand, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { verdictOf, type Limits } from '../../reading/verdict.ts';
import type { Block } from '../account.ts';
import { ownLimitsIn } from '../own-limits.ts';
import type { Answered } from '../worksheet.ts';
import type { SteeringFields } from './fields.ts';
import type { SteeringQuestion } from './question.ts';
import {
  sayChange,
  sayDegrees,
  sayMoved,
  sayRise,
  sayTrailChange,
  sayTrailFeel,
  sayTrailSign,
  steeringFigure,
} from './say-steering.ts';
import { trailVerdict, type SteeringAnswer } from './steering-geometry.ts';
import { whyOfSteering } from './why-of-steering.ts';

export type SteeringAnswered = Answered<SteeringFields, SteeringQuestion, SteeringAnswer>;

/** What is said of a front end: whether it may be ridden, the trail, what became of the rest, which change did it. */
export function steeringAccount(worked: SteeringAnswered): readonly (Block | undefined)[] {
  const { question, answer, unit } = worked;
  const { before, after } = answer;
  const figures = (length: Length) => steeringFigure(length, unit);
  return [
    ...verdictBlocks(worked),
    {
      is: 'lead',
      label: 'Trail',
      figure: figures(after.trail),
      unit,
      ...(answer.moved.length > 0 && {
        change: `${figures(before.trail)} → ${figures(after.trail)}`,
        limits: sayTrailChange(answer, unit),
      }),
    },
    {
      is: 'proof',
      sentence: `Trail is known to ${showBand(answer.trailHalfWidth, unit)} ${unit}, rake to ±${marked(question.before.rakeWithinDegrees)}°.`,
    },
    ...(answer.moved.length > 0 || sayTrailSign(answer, unit) !== ''
      ? [{ is: 'said', sentence: sayTrailFeel(answer, unit) } satisfies Block]
      : []),
    beforeAfter(answer, unit),
    whichMoved(answer, unit),
    { is: 'caution', of: 'steering' },
    { is: 'why', lines: whyOfSteering(question, answer, unit) },
  ];
}

/**
 * Against limits that were given, as there is no trail that is right for every machine; and against nothing: one that is or
 * may be negative comes first, and is never good.
 */
function verdictBlocks({ answer, given, unit }: SteeringAnswered): readonly Block[] {
  const own = ownLimitsIn(given);
  const sign = sayTrailSign(answer, unit);
  if (!own && sign === '') return [];
  // Without limits of one's own it is held against nothing, and the line shows how near it comes.
  const limits: Limits = own ?? { lower: zero, source: 'a wheel trails' };
  const { trailHalfWidth: halfWidth, doubt } = answer;
  const value = answer.after.trail;
  const shown = roundForShow(value, lengthOf(unit === 'mm' ? '.1 mm' : '.01 in'));
  const against = verdictOf({ value, halfWidth, limits, doubt });
  const kind = trailVerdict(answer, own)?.kind ?? against.kind;
  const isSaid = sign !== '' && (!own || against.kind !== 'no-good');
  return [
    ...(sign === '' ? [] : [{ is: 'verdict', kind: 'no-good', headline: sign } satisfies Block]),
    ...(isSaid
      ? []
      : [
          {
            is: 'verdict',
            kind: against.kind,
            headline: sayVerdict(against, { quantity: 'trail', unit, limits, value: shown, halfWidth }),
          } satisfies Block,
        ]),
    { is: 'line', label: 'trail', value: shown, halfWidth, limits, verdict: kind },
  ];
}

function beforeAfter({ before, after, rise }: SteeringAnswer, unit: ShownUnit): Block {
  const size = (length: Length) => `${steeringFigure(length, unit)} ${unit}`;
  return {
    is: 'rows',
    title: 'Before and after',
    leads: true,
    rows: [
      {
        what: 'Rake',
        figure: sayDegrees(after.rakeDegrees),
        more: `was ${sayDegrees(before.rakeDegrees)}`,
      },
      {
        what: 'Ride height, half-way',
        figure: sayRise(rise.middle, unit),
        more: `front ${sayRise(rise.front, unit)}, rear ${sayRise(rise.rear, unit)}`,
      },
      { what: 'Wheelbase', figure: size(after.wheelbase), more: `was ${size(before.wheelbase)}` },
      {
        what: 'Trail, square to the axis',
        figure: size(after.normalTrail),
        more: `was ${size(before.normalTrail)}`,
      },
    ],
  };
}

function whichMoved({ moved, together }: SteeringAnswer, unit: ShownUnit): Block | undefined {
  if (moved.length === 0) return undefined;
  return {
    is: 'rows',
    title: 'Which change moved it',
    rows: [
      ...moved.map((one) => ({ what: sayChange(one.name), figure: sayMoved(one, unit) })),
      ...(moved.length > 1
        ? [
            {
              what: 'Together',
              figure: `${steeringFigure(together, unit)} ${unit}`,
              more: 'what they do to each other beyond their sum',
            },
          ]
        : []),
    ],
  };
}
