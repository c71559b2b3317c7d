import { isNegative, type Length } from '../../length/length.ts';
import { figure, figureBetween, showBand, showBetween, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Block, LineBlock, RowsBlock, WayBlock } from '../account.ts';
import { strengthBlocks } from '../strength.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfLineUp, cutNameOf } from './cuts-of-line-up.ts';
import { axleFieldsFor, type AxleFields } from './fields.ts';
import { inWorkOrder, type LineUpAnswer, type LineUpQuestion, type Spacer } from './line-up.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import { reachOf } from './line-up-spacer.ts';
import { lineUpVerdict, sayCheck, sayLineUp } from './say-line-up.ts';
import { NOTHING_GIVES, sayGiveInTwo, sayGivesStrength, sayNotJudged } from './say-gives.ts';
import { sayDeed } from './say-deeds.ts';
import { readName, spacerLetter, spacerName } from './say-line-up-names.ts';
import { isShared, sayWorst, sideOf } from './say-line-up-shared.ts';
import { proofOfLineUp } from './settler.ts';
import { whyOfLineUp } from './why.ts';

type LineUpAnswered = Answered<AxleFields, LineUpQuestion, LineUpAnswer>;

/** What is said of an axle: the worst of all it judges, the lengths of its spacers in the order of work, what has to give. */
export function axleAccount(worked: LineUpAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const headline = sayLineUp(answer, { ...question, unit });
  const judged = [...answer.checks, ...answer.shared.filter(({ verdict }) => verdict.kind !== 'good')];
  const further = [
    ...sayNotJudged(answer).map((said) => ({ kind: 'too-close' as const, said })),
    ...judged.map((check) => ({ kind: check.verdict.kind, said: sayCheck(check, unit) })),
  ].filter(({ said }) => said !== headline);
  return [
    { is: 'verdict', kind: lineUpVerdict(answer), headline },
    ...waysToGive(answer, unit),
    spacerRows(worked),
    proofOfLineUp(question, answer, given),
    askFirst(worked),
    ...bracketHeld(worked),
    ...further.map(({ kind, said }): Block => ({ is: 'verdict', kind, headline: said })),
    ...judged.map((check) => lineOf(check)),
    ...atTheWorst(answer, unit),
    { is: 'why', lines: whyOfLineUp(question, answer, unit) },
  ];
}

/** Each spacer with its letter in the drawing, the length it will have, and what is done about it. */
function spacerRows({ question, answer, unit }: LineUpAnswered): RowsBlock {
  const cuts = new Set(
    cutsOfLineUp(question, answer).flatMap(({ offers }) => offers.map(({ name }) => name)),
  );
  return {
    is: 'rows',
    title: `In the order of work (${unit})`,
    leads: true,
    rows: inWorkOrder(answer).map((spacer) => {
      const letter = spacerLetter(spacer.name, question.layout);
      const name = spacerName(spacer.name, question);
      const cut = cutNameOf(question, spacer);
      return {
        what: letter === '' ? name : `${letter} ${name}`,
        figure: spacer.deed.kind === 'last' ? '—' : fittedFigure(spacer, unit),
        more: deedInRow(spacer, unit),
        ...(cut !== undefined && cuts.has(cut) && { cut }),
      };
    }),
  };
}

function fittedFigure({ deed, fitted }: Spacer, unit: ShownUnit): string {
  const reach = reachOf(deed);
  if (reach?.ok !== true || deed.kind === 'shim') return figure(fitted, unit);
  return figureBetween(fitted, reach.value.lower, reach.value.upper, unit);
}

function deedInRow(spacer: Spacer, unit: ShownUnit): string {
  const { act } = sayDeed(spacer, unit);
  const reach = reachOf(spacer.deed);
  if (reach?.ok !== true || spacer.deed.kind === 'shim') return act;
  const { lower, upper, unproved } = reach.value;
  if (unproved) return `${act}; known ${withUnit(showBand(unproved, unit), unit)}`;
  return `${act}, ${withUnit(showBetween(lower, upper, unit), unit)}`;
}

/** What could give, each alone, the plainest first: where a spacer has no room, and where two lines can't both hold. */
function waysToGive(answer: LineUpAnswer, unit: ShownUnit): readonly Block[] {
  const isShort = answer.spacers.some(({ value, deed }) => isNegative(value) || deed.kind === 'too-short');
  const lost = answer.checks.filter(({ kind, verdict }) => kind === 'line' && verdict.kind === 'no-good');
  if (!isShort && lost.length === 0) return [];
  const gives = [...(isShort ? answer.gives : []), ...lost.flatMap((check) => check.gives)];
  return [
    ...gives.map((give, index): WayBlock => {
      const { what, how } = sayGiveInTwo(give, unit);
      return { is: 'way', title: what, detail: how, stands: 'open', rank: index + 1 };
    }),
    ...(gives.length === 0 ? [{ is: 'said', sentence: NOTHING_GIVES } as const] : []),
    ...strengthBlocks([sayGivesStrength(gives)]),
  ];
}

/** What is read again, or known of the disc, before anything is cut to these lengths. */
function askFirst({ question, answer, given }: LineUpAnswered): Block | undefined {
  const [again] = answer.readAgain;
  // It is read with all parts in: what is still to be cut comes first.
  if (again && cutsOfLineUp(question, answer).length === 0)
    return {
      is: 'ask',
      sentence: `${readName(again.name)}, read once more with the parts as they are now.`,
      field: again.name,
      key: 'Read it again',
    };
  if (lineUpVerdict(answer) === 'no-good') return undefined;
  const [open] = answer.openDiscs;
  if (!open && answer.openWear)
    return {
      is: 'ask',
      sentence: 'will the float last as the pads wear?',
      field: 'padWear',
      key: 'Give the wear',
    };
  if (!open || open.face) return undefined;
  const [field] = open.missing;
  const asked = field === undefined ? undefined : axleFieldsFor(given)[field];
  if (field === undefined || !asked) return undefined;
  const sentence = 'will the disc run clear of its slot?';
  return { is: 'ask', sentence, field, key: `Give ${uncapitalThe(asked.label)}` };
}

/** `Slot’s width` becomes `the slot’s width`. */
function uncapitalThe(label: string): string {
  return `the ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
}

/** A bracket on a sleeve turns with the wheel unless something holds it. */
function bracketHeld({ question, given }: LineUpAnswered): readonly Block[] {
  if (question.layout.discs.length === 0) return [];
  const anchor = given.choice('anchor');
  if (anchor === undefined || anchor === 'none')
    return [
      { is: 'caution', of: 'bracket' },
      { is: 'said', on: 'paper', sentence: 'What holds the bracket: not named.' },
    ];
  const field = axleFieldsFor(given)['anchor'];
  const words =
    field?.enter === 'choice' ? field.options.find(({ value }) => value === anchor)?.words : anchor;
  return [
    {
      is: 'said',
      on: 'paper',
      sentence: `What holds the bracket: ${(words ?? anchor).toLowerCase()}.`,
    },
  ];
}

const LINE_LABELS: Readonly<Record<Exclude<LineUpCheck['kind'], 'line' | 'wheel-place'>, string>> = {
  'pad-wear': 'left beyond the wear',
  'disc-in-slot': 'room beside the disc',
  'side-play': 'side play',
  'wheel-centre': 'sides differ by',
  opening: 'room left',
  float: 'float',
  'slot-middle': 'slot off by',
};

function lineOf({ kind, name, value, band, limits, verdict, terms, direct }: LineUpCheck): LineBlock {
  const plain = kind === 'line' || kind === 'wheel-place' ? `${name} off by` : LINE_LABELS[kind];
  const face = direct && kind === 'disc-in-slot' ? ` ${faceOf(terms[0]?.of ?? '')}` : '';
  return {
    is: 'line',
    label: `${kind === 'line' || kind === 'wheel-place' ? '' : sideOf(name)}${plain}${face}`,
    value,
    halfWidth: band.halfWidth,
    limits,
    verdict: verdict.kind,
  };
}

function faceOf(read: string): string {
  return read.endsWith('nsideRead') ? 'inside' : 'outside';
}

/** What all parts share, when every one of them is off the worst way at once. */
function atTheWorst(answer: LineUpAnswer, unit: ShownUnit): readonly Block[] {
  const good = answer.shared.filter(isShared).filter(({ verdict }) => verdict.kind === 'good');
  const rows = good.flatMap((check) => {
    const said = sayWorst(check, unit);
    return said ? [said] : [];
  });
  return rows.length === 0 ? [] : [{ is: 'rows', title: 'At the worst of what is allowed', rows }];
}

/** Lengths that are made or faced by this answer, as their cuts name them. */
export function lengthsToMake(
  answer: LineUpAnswer,
): readonly { readonly name: string; readonly length: Length }[] {
  return answer.spacers.flatMap(({ name, deed }) => {
    const reach = deed.kind === 'shim' ? deed.make : reachOf(deed);
    return reach?.ok === true ? [{ name, length: reach.value.to }] : [];
  });
}
