import type { BearingAnswer } from './answer.ts';
import { FACED_SLEEVE, MADE_SLEEVE, RECESS_DEEPER } from './cuts-of-bearing-seat.ts';
import type { SleeveAnswer } from './inner-sleeve.ts';
import type { ReadAside } from './question.ts';
import {
  MOCK_UP_SENTENCE,
  MOCK_UP_WHY,
  READ_IT_AGAIN,
  sayBySum,
  sayGoodBetween,
  saySeat,
  TOO_SHORT,
} from './say-bearing-seat.ts';
import { seatWhy, sleeveWhy, taperWhy } from './why.ts';
import { absolute, isNegative } from '../../length/length.ts';
import { figure, figureBetween, show, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Block, LeadBlock, WhyLine } from '../account.ts';
import { withInUse } from '../in-use.ts';
import { ofRing, ringWhy } from './account-ring.ts';
import { ofTaper } from './account-taper.ts';
import {
  type BearingGiven,
  type BearingAnswered,
  type Blocks,
  type AnswerOf,
  type Asked,
  judged,
  cutLead,
  shimLead,
  refused,
  apartSaid,
} from './account-judged.ts';
import { warmedBearing } from './warmed-bearing.ts';

/** What is said of a bearing: how it stands by its limits, and the sleeve, shim, turn or cut that puts it right. */
export function bearingAccount({ answer, question, given, unit }: BearingAnswered): Blocks {
  const warmed = warmedBearing(answer, given);
  const now = question.aside ? readAside(answer, question.aside, unit) : saidOf(answer, { question, given });
  const said = warmed ? withInUse(now, given, warmed) : now;
  return withMockUp([...said, { is: 'why', lines: whyOf(answer, unit) }], given);
}

function saidOf(answer: BearingAnswer, asked: Asked): Blocks {
  switch (answer.kind) {
    case 'ball':
      return ofSleeve(answer, asked);
    case 'taper':
      return ofTaper(answer, asked);
    case 'seat':
      return ofSeat(answer, asked);
    case 'ring':
      return ofRing(answer, asked);
    default:
      return answer satisfies never;
  }
}

function whyOf(answer: BearingAnswer, unit: ShownUnit): readonly WhyLine[] {
  switch (answer.kind) {
    case 'ball':
      return sleeveWhy(answer.ask, answer.found, unit);
    case 'taper':
      return taperWhy(answer.ask, answer.found, unit);
    case 'seat':
      return seatWhy(answer.ask, answer.found, unit);
    case 'ring':
      return ringWhy(answer, unit);
    default:
      return answer satisfies never;
  }
}

function ofSleeve({ ask, found: { make, present } }: AnswerOf<'ball'>, asked: Asked): Blocks {
  const { unit } = asked.given;
  if (!present) return [makeSleeve(make, 'Make the sleeve', unit)];
  const remedy =
    cutLead('Face the sleeve', FACED_SLEEVE, present.trim, unit) ??
    shimLead(present.shim, 'Shim beside the sleeve', unit);
  const isGood = present.verdict.kind === 'good';
  return [
    ...judged({ ...present, limits: ask.want.limits, quantity: 'excess length', label: 'longer by' }, asked, [
      remedy ?? (isGood || !make.provable ? undefined : makeSleeve(make, 'Make the sleeve new', unit)),
      isNegative(present.value) ? { is: 'said', sentence: TOO_SHORT } : undefined,
      refused(present.trim, unit),
      apartSaid(present.apart, 'shim or cut', unit),
    ]),
    present.shim && { is: 'extra', name: 'bearing-shims' },
    remedy && make.provable
      ? {
          is: 'way',
          title: 'Make the sleeve new',
          detail: `${show(make.target, unit)}, ${sayGoodBetween(make, unit)}`,
          stands: 'open',
          cut: MADE_SLEEVE,
        }
      : undefined,
    isGood
      ? {
          is: 'said',
          sentence: `A new sleeve: ${show(make.target, unit)}, ${sayGoodBetween(make, unit)}.`,
          on: 'paper',
        }
      : undefined,
  ];
}

function makeSleeve(make: SleeveAnswer['make'], label: string, unit: ShownUnit): LeadBlock {
  return {
    is: 'lead',
    label,
    figure: figureBetween(make.target, make.lower, make.upper, unit),
    unit,
    limits: sayGoodBetween(make, unit),
    cut: MADE_SLEEVE,
  };
}

function ofSeat({ ask, found }: AnswerOf<'seat'>, asked: Asked): Blocks {
  const { unit } = asked.given;
  const { proud, band, verdict, shim, deepen, apart } = found;
  if (!verdict || !ask.want)
    return [
      {
        is: 'lead',
        label: isNegative(proud) ? 'Lies below the face' : 'Stands proud',
        figure: figure(absolute(proud), unit),
        unit,
      },
      { is: 'proof', sentence: `Known to ${withUnit(showBand(band.halfWidth, unit), unit)}.` },
      {
        is: 'ask',
        sentence: 'With a least and a most it is judged.',
        field: asked.given.has('lower') ? 'upper' : 'lower',
        key: 'Give its limits',
      },
    ];
  const known = { value: proud, band, verdict, limits: ask.want.limits };
  return [
    ...judged({ ...known, quantity: 'projection', label: 'proud' }, asked, [
      cutLead('Make the recess deeper', RECESS_DEEPER, deepen, unit) ??
        shimLead(shim, 'Shim behind it', unit),
      { is: 'said', sentence: saySeat(found, unit) },
      refused(deepen, unit),
      apartSaid(apart, 'shim or cut', unit),
    ]),
    shim && { is: 'extra', name: 'bearing-shims' },
  ];
}

/** A reading in place showed the sum to be something else; it was set aside, and the sum is not called in its stead. */
function readAside(answer: BearingAnswer, { name, why }: ReadAside, unit: ShownUnit): Blocks {
  const kind = answer.kind === 'seat' ? 'seat' : 'ball';
  const value =
    answer.kind === 'seat'
      ? answer.found.proud
      : answer.kind === 'ball'
        ? answer.found.present?.value
        : undefined;
  return [
    { is: 'verdict', kind: 'too-close', headline: READ_IT_AGAIN },
    { is: 'said', sentence: `It was read before this: ${why}.`, on: 'phone' },
    value && { is: 'said', sentence: sayBySum(value, kind, unit) },
    { is: 'ask', sentence: 'Read it in place again.', field: name, key: 'Read it again' },
  ];
}

/** What a mock-up measures proves nothing of the real one: it is never good. */
function withMockUp(blocks: Blocks, given: BearingGiven): Blocks {
  if (given.choice('mockUp') !== 'yes') return blocks;
  const [first, ...rest] = blocks;
  const verdict = first?.is === 'verdict' ? first : undefined;
  const withWhy = (given_: Blocks): Blocks =>
    given_.map((block) =>
      block?.is === 'why'
        ? {
            ...block,
            lines: [
              ...block.lines,
              { what: 'Mock-up bearing', how: MOCK_UP_WHY },
              ...(verdict ? [{ what: 'With the mock-up', how: verdict.headline }] : []),
            ],
          }
        : block,
    );
  if (verdict && verdict.kind !== 'good')
    return withWhy([verdict, { is: 'said', sentence: MOCK_UP_SENTENCE }, ...rest]);
  const mockUp: Block = { is: 'verdict', kind: 'too-close', headline: MOCK_UP_SENTENCE };
  return withWhy([mockUp, ...(verdict ? rest : blocks)]);
}
