import { absolute, isNegative } from '../../length/length.ts';
import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import type { Block, LeadBlock, RowsBlock, VerdictBlock } from '../account.ts';
import type { AnyGiven } from '../given.ts';
import { proofOf } from '../proof.ts';
import type { TrailerAnswer, TrailerQuestion } from './alignment.ts';
import { moveFigure, sayAlike, sayTenths, withBand } from './say-alignment.ts';

type Trailer = {
  readonly question: TrailerQuestion;
  readonly answer: TrailerAnswer;
  readonly given: Pick<AnyGiven, 'tools' | 'unit'>;
  readonly unit: ShownUnit;
};

const WORST_FIRST: readonly VerdictBlock['kind'][] = ['no-good', 'too-close', 'good'];

/** Of a trailer: its axle square to the coupling first, then the wheels on it. */
export function trailerBlocks(of: Trailer): readonly (Block | undefined)[] {
  const { answer, given } = of;
  const { axle, toe, second } = answer;
  return [
    ...verdictsOf(of),
    leadBlock(of),
    moveRows(of),
    proofOf(axle.judged, given),
    { is: 'said', sentence: SQUARE_FIRST },
    { is: 'line', label: 'left less right', ...axle.judged, verdict: axle.judged.verdict.kind },
    toe && { is: 'line', label: 'toe-in', ...toe.judged, verdict: toe.judged.verdict.kind },
    second && { is: 'line', label: 'axle to axle', ...second.judged, verdict: second.judged.verdict.kind },
    asItStands(of),
  ];
}

const SQUARE_FIRST =
  'Coupling at its height, springs settled. Measure from hooked coupling, not from the frame.';

function verdictsOf({ answer: { axle, toe, second }, unit }: Trailer): readonly VerdictBlock[] {
  const verdict = (kind: VerdictBlock['kind'], headline: string): VerdictBlock => ({
    is: 'verdict',
    kind,
    headline,
  });
  return [
    verdict(axle.judged.verdict.kind, sayAlike('diagonals', axle.judged, unit)),
    ...(toe
      ? [
          verdict(
            toe.judged.verdict.kind,
            sayVerdict(toe.judged.verdict, { ...toe.judged, quantity: 'toe-in', unit }),
          ),
        ]
      : []),
    ...(second ? [verdict(second.judged.verdict.kind, sayAlike('both sides', second.judged, unit))] : []),
  ].toSorted((a, b) => WORST_FIRST.indexOf(a.kind) - WORST_FIRST.indexOf(b.kind));
}

function leadBlock({ question, answer: { axle }, unit }: Trailer): LeadBlock {
  const { slide, judged, degrees } = axle;
  if (judged.verdict.kind === 'good')
    return {
      is: 'lead',
      label: 'Axle is square to',
      figure: sayTenths(Math.abs(degrees)),
      unit: '',
      limits: 'leave it where it is',
    };
  return {
    is: 'lead',
    label: `Slide the ${slide.side} seat forward`,
    figure: moveFigure(slide, unit),
    unit,
    limits: withBand(question.axle.seats ? 'the other seat held' : 'at the axle’s end', slide, unit),
  };
}

/** What else is moved; the seat leads. */
function moveRows({ answer: { axle, toe, second }, unit }: Trailer): RowsBlock | undefined {
  const rows = [
    ...(toe && toe.judged.verdict.kind !== 'good' ? [toeRow(toe, unit)] : []),
    ...(second && second.judged.verdict.kind !== 'good'
      ? [
          {
            what: `Rear axle, ${second.slide.side}`,
            figure: moveFigure(second.slide, unit),
            more: 'forward, once the front axle is square',
          },
        ]
      : []),
  ];
  const title = axle.judged.verdict.kind === 'good' ? 'What to move' : 'Move too';
  return rows.length > 0 ? { is: 'rows', title, leads: true, rows } : undefined;
}

function toeRow({ shim, lacks }: NonNullable<TrailerAnswer['toe']>, unit: ShownUnit) {
  const bolts = isNegative(lacks) ? 'front' : 'rear';
  return shim
    ? {
        what: 'Shim each flange',
        figure: moveFigure(shim, unit),
        more: withBand(`behind its ${bolts} bolts`, shim, unit),
      }
    : { what: 'Toe-in lacks', figure: figure(lacks, unit), more: 'give the flange’s bolts for a shim' };
}

function asItStands({ answer: { axle, toe }, unit }: Trailer): RowsBlock {
  const size = (length: Parameters<typeof figure>[0]) => withUnit(figure(length, unit), unit);
  return {
    is: 'rows',
    title: 'As it stands',
    rows: [
      {
        what: 'Out of square',
        figure: sayTenths(Math.abs(axle.degrees)),
        more: `${axle.slide.side} end back`,
      },
      { what: 'Coupling to axle', figure: size(axle.reach) },
      ...(axle.offCentre
        ? [
            {
              what: 'Axle off the middle',
              figure: size(absolute(axle.offCentre)),
              more: isNegative(axle.offCentre) ? 'to the left' : 'to the right',
            },
          ]
        : []),
      ...(toe ? [{ what: 'Toe-in', figure: size(toe.judged.value), more: sayTenths(toe.degrees) }] : []),
    ],
  };
}
