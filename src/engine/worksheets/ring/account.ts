import { bandOf, mean, type Band } from '../../reading/estimate.ts';
import { isZero, type Length } from '../../length/length.ts';
import type { RingAnswer, RingQuestion, RingSize } from './ring.ts';
import type { CutFromBlank, RingCut } from './ring-blank.ts';
import {
  RING_NOT_PROVED,
  sayBlank,
  sayGood,
  sayHolding,
  sayProud,
  sayRingCut,
  sayRingDeed,
  sayWhyNot,
} from './say-ring.ts';
import { legOf } from '../../reading/settle.ts';
import { figure, figureBetween, show, showBand, type ShownUnit } from '../../length/show.ts';
import type { Block, LeadBlock, WhyLine } from '../account.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { ringCutName } from './cuts-of-ring.ts';
import type { RingFields } from './fields.ts';

type RingAnswered = Answered<RingFields, RingQuestion, RingAnswer>;

/** What is said of a ring: its cuts or sizes, whether they are proved, how it stands, what else it could be cut from. */
export function ringAccount({ question, answer, given, unit }: RingAnswered): readonly (Block | undefined)[] {
  const { best, others } = answer.fromBlanks;
  return [
    ...notProved({ question, answer, given, unit }),
    ...(best ? fromBest(best, unit) : newSizes(answer, unit)),
    { is: 'said', sentence: sayProud(answer, unit) },
    ...(best?.holding.map((holding): Block => ({ is: 'said', sentence: sayHolding(holding) })) ?? []),
    best && { is: 'extra', name: 'take-blank' },
    { is: 'caution', of: 'lathe' },
    ...others.map((other) => wayFrom(other, unit)),
    ...ruledOut(answer),
    { is: 'why', lines: whyLines(question, answer, unit) },
  ];
}

function fromBest(best: CutFromBlank, unit: ShownUnit): readonly Block[] {
  if (best.cuts.length === 0) return [{ is: 'verdict', kind: 'good', headline: sayBlank(best) }];
  return [...best.cuts.map((cut) => cutLead(cut, unit)), { is: 'said', sentence: sayBlank(best) }];
}

function cutLead(cut: RingCut, unit: ShownUnit): LeadBlock {
  const to = figureBetween(cut.to, cut.lower, cut.upper, unit);
  return {
    is: 'lead',
    label: sayRingDeed(cut),
    figure: to,
    unit,
    change: `${figure(cut.from, unit)} → ${to}`,
    limits: sayGood(cut, unit),
    cut: ringCutName(cut.kind),
  };
}

function newSizes({ outside, inside, thickness }: RingAnswer, unit: ShownUnit): readonly Block[] {
  const lead = (label: string, size: RingSize): Block => ({
    is: 'lead',
    label,
    figure: figureBetween(size.target, size.lower, size.upper, unit),
    unit,
    limits: sayGood(size, unit),
    cut: ringCutName(size.kind),
  });
  return [
    lead('Outside', outside),
    lead('Inside', inside),
    ...(thickness ? [lead('Thickness, at most', thickness)] : []),
  ];
}

/** Readings too wide for the clearance, and the tool that would do. */
function notProved({ question, answer, given }: RingAnswered): readonly (Block | undefined)[] {
  const sides = [
    {
      size: answer.outside,
      limits: question.outsideClearance,
      of: question.recess.tightest,
      kind: 'bore' as const,
    },
    {
      size: answer.inside,
      limits: question.insideClearance,
      of: question.stem.tightest,
      kind: 'pin' as const,
    },
  ].filter(({ size }) => !size.provable);
  if (sides.length === 0) return [];
  return [
    { is: 'verdict', kind: 'too-close', headline: RING_NOT_PROVED },
    ...sides.map(({ size, limits, of, kind }) =>
      proofOf(
        {
          verdict: { kind: 'good' },
          value: limits.aim,
          halfWidth: size.band.halfWidth,
          limits,
          legs: [legOf(kind, of, 1)],
        },
        given,
      ),
    ),
  ];
}

function wayFrom({ blank, cuts }: CutFromBlank, unit: ShownUnit): Block {
  const detail =
    cuts.length === 0
      ? 'goes in as it is'
      : cuts.map((cut) => `${sayRingDeed(cut)}: ${sayRingCut(cut, unit)}`).join(' ');
  return { is: 'way', title: blank.name, detail, stands: 'open' };
}

function ruledOut({ fromBlanks }: RingAnswer): readonly Block[] {
  const unmeasured = fromBlanks.ruledOut.filter(({ why }) => why === 'not-measured').length;
  return [
    ...fromBlanks.ruledOut
      .filter(({ why }) => why !== 'not-measured')
      .map(({ blank, why }): Block => ({
        is: 'way',
        title: blank.name,
        detail: sayWhyNot(why),
        stands: 'out',
      })),
    ...(unmeasured === 0
      ? []
      : [
          {
            is: 'way',
            title: unmeasured === 1 ? 'One more piece' : `${unmeasured} more pieces`,
            detail: sayWhyNot('not-measured'),
            stands: 'asks',
          } satisfies Block,
        ]),
  ];
}

function whyLines(q: RingQuestion, answer: RingAnswer, unit: ShownUnit): readonly WhyLine[] {
  const size = (length: Length) => figure(length, unit);
  const known = ({ halfWidth }: Band) =>
    isZero(halfWidth)
      ? ''
      : ` The size it comes from is known to ${showBand(halfWidth, unit)}: its limits allow for that.`;
  return [
    {
      what: 'Outside',
      how: `recess bore − clearance = ${size(mean(q.recess.tightest))} − ${size(q.outsideClearance.aim)} = ${size(answer.outside.aim)} ${unit}, left full to the dial’s step: ${size(answer.outside.target)}.${known(bandOf(q.recess.tightest))}`,
      source: `clearance: ${q.outsideClearance.source}`,
    },
    {
      what: 'Inside',
      how: `stem + clearance = ${size(mean(q.stem.tightest))} + ${size(q.insideClearance.aim)} = ${size(answer.inside.aim)} ${unit}, cut shy to the dial’s step: ${size(answer.inside.target)}.${known(bandOf(q.stem.tightest))}`,
      source: `clearance: ${q.insideClearance.source}`,
    },
    ...(q.depth && answer.thickness
      ? [
          {
            what: 'Thickness',
            how: `at most depth − what must stay free = ${size(mean(q.depth))} − ${q.stayFree ? size(q.stayFree) : '0'}${isZero(bandOf(q.depth).halfWidth) ? '' : ` − ${size(bandOf(q.depth).halfWidth)} of band`} = ${show(answer.thickness.upper, unit)}`,
            source: 'geometry',
          },
        ]
      : []),
    {
      what: 'Which washer',
      how: 'the one with the fewest cuts, then with the least to come off',
      source: 'common practice, no source',
    },
  ];
}
