import { sayAngle } from '../../length/angle.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { figure, figureTo, show, showLimits, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Block, LeadBlock, RowsBlock } from '../account.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfTaper } from './cuts-of-taper.ts';
import type { TaperFields } from './fields.ts';
import {
  degreesFigure,
  sayBeside,
  sayKnown,
  sayMate,
  sayOff,
  sayOneIn,
  sayPerFoot,
  sayStack,
} from './say-taper.ts';
import type { SineStack } from './sine-bar.ts';
import type { TaperAnswer, TaperQuestion } from './taper.ts';
import { whyOfTaper } from './why-of-taper.ts';

export type TaperAnswered = Answered<TaperFields, TaperQuestion, TaperAnswer>;

/** What is said of a taper: whether it fits, how the compound is set, the ends, tailstock and sine bar, other words for it. */
export function taperAccount(worked: TaperAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const offers = cutsOfTaper(question, answer, given.dialFor(question.side)).flatMap((way) => way.offers);
  return [
    ...mateBlocks(worked),
    leadOf(answer),
    setRows(answer, unit),
    endRows(question, answer, offers, unit),
    answer.cone.known && { is: 'proof', sentence: `Known to ${sayKnown(answer, unit)}.` },
    { is: 'said', sentence: TRY_IT },
    ...(offers.length > 0 ? [{ is: 'caution', of: 'lathe' } satisfies Block] : []),
    otherWords(answer, unit),
    { is: 'why', lines: whyOfTaper(question, answer, unit) },
  ];
}

const TRY_IT = 'A scale is too coarse: blue it in its socket before the last passes.';

function mateBlocks({
  answer: { mate },
  given,
  unit,
  question,
}: TaperAnswered): readonly (Block | undefined)[] {
  if (!mate) return [];
  return [
    { is: 'verdict', kind: mate.verdict.kind, headline: sayMate(mate, unit) },
    question.known.by === 'diameters' ? proofOf(mate, given) : undefined,
    mate.verdict.kind === 'too-close' && question.known.by !== 'diameters'
      ? { is: 'proof', sentence: 'Read them again with a finer tool, or blue it in its socket.' }
      : undefined,
    { is: 'line', label: 'off it', ...mate, verdict: mate.verdict.kind },
  ];
}

function leadOf({ cone: { halfDegrees } }: TaperAnswer): LeadBlock {
  return {
    is: 'lead',
    label: 'Set the compound to',
    figure: `${degreesFigure(halfDegrees)}°`,
    unit: '',
    change: sayAngle(halfDegrees),
    limits: `half of ${sayAngle(2 * halfDegrees)} included`,
  };
}

/** How it is set: by indicator, by the tailstock, by the sine bar. */
function setRows(answer: TaperAnswer, unit: ShownUnit): RowsBlock {
  const { indicator, setOver, sine } = answer;
  const per = (length: Parameters<typeof figure>[0]) =>
    unit === 'in' ? '1 in' : `${figure(length, unit).replace(/[.,]0+$/, '')} mm`;
  return {
    is: 'rows',
    title: 'Set it by',
    leads: true,
    rows: [
      {
        what: 'Indicator',
        figure: figure(indicator.reads, unit),
        more: `across, over ${per(indicator.travel)} of the compound`,
      },
      ...(setOver.isTooSteep
        ? []
        : [
            setOver.whole
              ? {
                  what: 'Tailstock over',
                  figure: figure(setOver.whole.by, unit),
                  more: `${show(setOver.whole.between, unit)} between centres`,
                }
              : {
                  what: 'Tailstock over',
                  figure: figure(setOver.each, unit),
                  more: `for each ${per(setOver.per)} between centres`,
                },
          ]),
      ...sineRow(sine.included, unit),
    ],
  };
}

function sineRow(stack: SineStack | undefined, unit: ShownUnit) {
  if (!stack) return [];
  return [{ what: 'Sine bar', figure: figure(stack.height, unit), more: sayStack(stack, unit) }];
}

function endRows(
  { side, within }: TaperQuestion,
  { cone, at, slant }: TaperAnswer,
  offers: readonly CutOffer[],
  unit: ShownUnit,
): RowsBlock {
  const [first, then] = side === 'bore' ? offers.toReversed() : offers;
  const end = (what: string, offer: CutOffer | undefined, size: Parameters<typeof figure>[0]) => ({
    what,
    figure: figure(offer?.target ?? size, unit),
    more: offer && showLimits(offer.lower, offer.upper, unit),
    cut: offer?.name,
  });
  return {
    is: 'rows',
    title: side === 'bore' ? 'Bore it' : 'Turn it',
    leads: true,
    rows: [
      end(side === 'bore' ? 'Mouth' : 'Big end', first, cone.large),
      end('Small end', then, cone.small),
      ...(at
        ? [
            {
              what: `${show(at.from, unit)} down`,
              figure: figure(at.size, unit),
              more: `within ${withUnit(figure(within, unit), unit)}`,
            },
          ]
        : []),
      { what: 'Compound travels', figure: figure(slant, unit) },
    ],
  };
}

/** The same taper as others would say it. */
function otherWords({ cone, perFoot, oneIn, nearest, sine, mate }: TaperAnswer, unit: ShownUnit): RowsBlock {
  const half = sine.half;
  return {
    is: 'rows',
    title: 'The same taper',
    rows: [
      { what: 'Per foot', figure: `${sayPerFoot(perFoot)} in` },
      { what: 'One in', figure: sayOneIn(oneIn) },
      {
        what: 'Included',
        figure: `${degreesFigure(2 * cone.halfDegrees)}°`,
        more: sayAngle(2 * cone.halfDegrees),
      },
      ...(mate ? [] : [{ what: 'By name', figure: nearest.taper.name, more: sayBeside(nearest, unit) }]),
      ...(half
        ? [
            {
              what: 'Sine bar, half angle',
              figure: figureTo(half.height, unit, 5),
              more: `${sayStack(half, unit)}, ${sayOff(half)}`,
            },
          ]
        : []),
    ],
  };
}
