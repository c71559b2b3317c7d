import { absolute, isNegative, plus } from '../../length/length.ts';
import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { middleOf } from '../../reading/verdict.ts';
import type { Block, LeadBlock, RowsBlock, VerdictBlock } from '../account.ts';
import type { AnyGiven } from '../given.ts';
import { proofOf } from '../proof.ts';
import type { OutfitAnswer, OutfitQuestion } from './alignment.ts';
import {
  moveFigure,
  sayFitting,
  sayLean,
  sayLonger,
  sayTenths,
  sayTurns,
  withBand,
} from './say-alignment.ts';

type Outfit = {
  readonly question: OutfitQuestion;
  readonly answer: OutfitAnswer;
  readonly given: Pick<AnyGiven, 'tools' | 'unit'>;
  readonly unit: ShownUnit;
};

const WORST_FIRST: readonly VerdictBlock['kind'][] = ['no-good', 'too-close', 'good'];

/** Of an outfit: toe-in first, as it is what everything else moves. */
export function outfitBlocks(of: Outfit): readonly (Block | undefined)[] {
  const { answer, given, unit } = of;
  const { toe, lead } = answer;
  return [
    ...verdictsOf(of),
    leadBlock(of),
    moveRows(of),
    proofOf(toe.judged, given),
    { is: 'said', sentence: 'Set lead and lean-out first: either of them moves the toe-in.' },
    { is: 'said', sentence: 'Level floor, tyres at pressure, loaded as it runs.' },
    { is: 'line', label: 'toe-in', ...toe.judged, verdict: toe.judged.verdict.kind },
    lead && { is: 'line', label: 'wheel lead', ...lead, verdict: lead.verdict.kind },
    asItStands(answer, unit),
  ];
}

function verdictsOf({ answer: { toe, lead, lean }, unit }: Outfit): readonly VerdictBlock[] {
  return [
    {
      is: 'verdict',
      kind: toe.judged.verdict.kind,
      headline: sayVerdict(toe.judged.verdict, { ...toe.judged, quantity: 'toe-in', unit }),
    } as const,
    ...(lean ? [{ is: 'verdict', kind: lean.verdict.kind, headline: sayLean(lean) } as const] : []),
    ...(lead
      ? [
          {
            is: 'verdict',
            kind: lead.verdict.kind,
            headline: sayVerdict(lead.verdict, { ...lead, quantity: 'wheel lead', unit }),
          } as const,
        ]
      : []),
  ].toSorted((a, b) => WORST_FIRST.indexOf(a.kind) - WORST_FIRST.indexOf(b.kind));
}

/** What is moved for the toe-in; where it is good, how it stands. */
function leadBlock({ question, answer: { toe, move }, unit }: Outfit): LeadBlock {
  const now = figure(toe.judged.value, unit);
  if (toe.judged.verdict.kind === 'good')
    return {
      is: 'lead',
      label: 'Toe-in as it is',
      figure: now,
      unit,
      limits: `${sayTenths(toe.degrees)} between both wheels`,
    };
  return {
    is: 'lead',
    label: sayFitting(move, question),
    figure: moveFigure(move, unit),
    unit,
    change: `toe-in ${now} → ${figure(middleOf(question.toe.want), unit)}`,
    limits: withBand(sayTurns(move, question), move, unit),
  };
}

/** What else is moved; the fitting leads. */
function moveRows({ answer, unit }: Outfit): RowsBlock | undefined {
  const { lead, lean, track, toe } = answer;
  const rows = [
    ...(lead && lead.verdict.kind !== 'good'
      ? [
          {
            what: `Slide it ${isNegative(lead.lacks) ? 'back' : 'forward'}`,
            figure: figure(absolute(lead.lacks), unit),
            more: `lead ${figure(lead.value, unit)} → ${figure(plus(lead.value, lead.lacks), unit)}`,
          },
        ]
      : []),
    ...(lean && lean.verdict.kind !== 'good' ? [leanRow(lean, unit)] : []),
    ...(track?.lacks
      ? [
          {
            what: `Slide it ${isNegative(track.lacks) ? 'in' : 'out'}`,
            figure: figure(absolute(track.lacks), unit),
            more: `track ${figure(track.now, unit)} → ${figure(plus(track.now, track.lacks), unit)}`,
          },
        ]
      : []),
  ];
  const title = toe.judged.verdict.kind === 'good' ? 'What to move' : 'Move too';
  return rows.length > 0 ? { is: 'rows', title, leads: true, rows } : undefined;
}

function leanRow(lean: NonNullable<OutfitAnswer['lean']>, unit: ShownUnit) {
  const turn = `lean-out ${sayTenths(lean.degrees)} → ${sayTenths(lean.aimDegrees)}`;
  return lean.strut
    ? {
        what: 'Upper strut',
        figure: sayLonger(lean.strut, unit),
        more: withBand(turn, lean.strut, unit),
      }
    : { what: 'Lean it out to', figure: sayTenths(lean.aimDegrees), more: `${turn}: strut not given` };
}

function asItStands({ toe, lead, lean, track }: OutfitAnswer, unit: ShownUnit): RowsBlock {
  const size = (length: Parameters<typeof figure>[0]) => withUnit(figure(length, unit), unit);
  return {
    is: 'rows',
    title: 'As it stands',
    rows: [
      { what: 'Toe-in', figure: size(toe.judged.value), more: sayTenths(toe.degrees) },
      ...(lead ? [{ what: 'Wheel lead', figure: size(lead.value) }] : []),
      ...(lean ? [{ what: 'Lean-out', figure: sayTenths(lean.degrees) }] : []),
      ...(track ? [{ what: 'Track', figure: size(track.now) }] : []),
    ],
  };
}
