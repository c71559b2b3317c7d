import type { Checked, FormRefusal, PartFor } from '../../fit/fit-check.ts';
import { STANDARDS, type FitLimits, type Range } from '../../fit/fits.ts';
import { fitClassNamed, sayClearance, sayFitRefusal, sayLimits } from '../../fit/say-fit.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { isZero } from '../../length/length.ts';
import type { Result } from '../../length/refusal.ts';
import { figure, figureBetween, knownFigure, showBand, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { legOf } from '../../reading/settle.ts';
import type { Verdict } from '../../reading/verdict.ts';
import type { Block, LeadBlock, RowsBlock } from '../account.ts';
import { withInUse } from '../in-use.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfFitAnswer } from './cuts-of-fit.ts';
import type { FitFields } from './fields.ts';
import type { FitAnswer } from './fit.ts';
import type { FitQuestion } from './question.ts';
import { sayKept, sayKeptInRow } from './say-kept.ts';
import { warmedFit } from './warmed-fit.ts';
import { whyOfFit } from './why-of-fit.ts';

export type FitAnswered = Answered<FitFields, FitQuestion, FitAnswer>;

/** What is said of a fit: the verdict on two parts and the class they keep, the part to make, the limits of the class. */
export function fitAccount(worked: FitAnswered): readonly (Block | undefined)[] {
  const { given } = worked;
  const warmed = warmedFit(worked);
  const blocks = atTwenty(worked);
  return warmed ? withInUse(blocks, given, warmed) : blocks;
}

function atTwenty(worked: FitAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const { fit, kept } = answer;
  const offers = cutsOfFitAnswer(question, answer, given.dial).flatMap((way) => way.offers);
  return [
    ...verdictBlocks(worked),
    ...offers.map((offer) => cutLead(offer, unit)),
    ...(offers.length === 0 && !answer.clearance ? classLead(fit, unit) : []),
    ...(offers.length > 0 && !answer.clearance ? madeProof(answer) : []),
    kept && { is: 'said', sentence: sayKept(kept[question.system], fit.fitClass) },
    question.slop && { is: 'said', sentence: 'The clearance is as the indicator read it.' },
    ...readAgain(worked),
    keptRows(worked),
    limitRows(answer, { leads: offers.length === 0 && !answer.clearance, unit }),
    ...(offers.length > 0 ? [{ is: 'caution', of: 'lathe' } satisfies Block] : []),
    { is: 'why', lines: whyOfFit(question, answer, unit) },
  ];
}

/** An indicator read other parts than these: until it reads again bore less pin counts. */
function readAgain({ given }: FitAnswered): readonly Block[] {
  const before = given.readBefore('slop');
  if (!before) return [];
  return [
    {
      is: 'ask',
      sentence: `the clearance was read before this: ${before.why}.`,
      field: 'slop',
      key: 'Read it again',
    },
  ];
}

/** Two measured parts are judged as a pair; a part too far out of true for the class is no good by itself. */
function verdictBlocks({ question, answer, given, unit }: FitAnswered): readonly (Block | undefined)[] {
  const { clearance } = answer;
  if (!clearance) {
    // Readings that contradict each other are no form: which one stands has to be said first.
    const isDoubted = [answer.bore, answer.pin].some((part) => part && inDoubt(part.verdict));
    const refused = isDoubted
      ? undefined
      : [answer.pinForBore, answer.boreForPin].find((made) => made?.ok === false);
    return refused?.ok === false
      ? [{ is: 'verdict', kind: 'no-good', headline: sayFitRefusal(refused.refusal, unit) }]
      : [];
  }
  const { verdict, value, halfWidth, limits } = clearance;
  const legs = [
    ...(question.bore ? [legOf('bore', question.bore.loosest, 1)] : []),
    ...(question.pin ? [legOf('pin', question.pin.loosest, -1)] : []),
  ];
  return [
    {
      is: 'verdict',
      kind: verdict.kind,
      headline: sayVerdict(verdict, { quantity: 'clearance', unit, limits, value, halfWidth }),
    },
    question.slop ? undefined : proofOf({ verdict, value, halfWidth, limits, legs }, given),
    { is: 'line', label: 'clearance', value, halfWidth, limits, verdict: verdict.kind },
  ];
}

function inDoubt(verdict: Verdict): boolean {
  return verdict.kind === 'too-close' && verdict.doubt === true;
}

const DEEDS: Readonly<Record<string, string>> = {
  'Pin, made new': 'Make the pin',
  'Pin, turned down': 'Turn the pin down',
  'Bore, to size': 'Make the bore',
  'Bore, opened': 'Open the bore',
};

/** The figure that is cut: the dial's own, with metal left on. */
function cutLead({ name, present, target, lower, upper }: CutOffer, unit: ShownUnit): LeadBlock {
  const to = figureBetween(target, lower, upper, unit);
  return {
    is: 'lead',
    label: DEEDS[name] ?? name,
    figure: to,
    unit,
    change: present && `${figure(present, unit)} → ${to}`,
    limits: `good from ${sayLimits({ lower, upper }, unit)}`,
    cut: name,
  };
}

/** Nothing is measured yet: what the class is, and what it leaves. */
function classLead(fit: FitLimits, unit: ShownUnit): readonly Block[] {
  const { name, meaning } = fitClassNamed(fit);
  return [
    { is: 'lead', label: name, figure: fit.fitClass, unit: '', limits: sayClearance(fit, unit) },
    ...(meaning === undefined ? [] : [{ is: 'said', sentence: `${meaning}.` } satisfies Block]),
  ];
}

function madeProof({ pinForBore, boreForPin }: FitAnswer): readonly Block[] {
  const isSure = [pinForBore, boreForPin].every((made) => made?.ok !== true || made.value.sure !== undefined);
  return isSure
    ? []
    : [
        {
          is: 'proof',
          sentence:
            'These readings can’t prove it. Measure closer, or try the parts together before the last pass.',
        },
      ];
}

function limitRows(
  { fit, bore, pin, pinForBore, boreForPin }: FitAnswer,
  { leads, unit }: { readonly leads: boolean; readonly unit: ShownUnit },
): RowsBlock {
  const row = (what: string, limits: Range, checked?: Checked) => ({
    what,
    figure: sayLimits(limits, unit),
    ...(checked && { more: sayMeasured(checked, unit) }),
  });
  return {
    is: 'rows',
    title: `Limits of ${fit.fitClass}`,
    rows: [
      row('Hole', fit.hole, bore),
      row('Pin', fit.pin, pin),
      { what: clearanceTitle(fit), figure: sayClearance(fit, unit) },
      ...(pinForBore ? [madeRow('Pin for this bore', pinForBore, unit)] : []),
      ...(boreForPin ? [madeRow('Bore for this pin', boreForPin, unit)] : []),
    ],
    ...(leads && { leads: true as const }),
  };
}

/** Which classes the two keep, of either standard, and how far that is proved. */
function keptRows({
  question: { system },
  answer: { kept, clearance },
  unit,
}: FitAnswered): Block | undefined {
  if (!kept || !clearance) return undefined;
  const { value, halfWidth } = clearance;
  const systems = system === 'ansi' ? (['ansi', 'iso'] as const) : (['iso', 'ansi'] as const);
  return {
    is: 'rows',
    title: 'The class they keep',
    rows: [
      ...systems.map((one) => ({ what: STANDARDS[one], ...sayKeptInRow(kept[one]) })),
      {
        what: 'Clearance of these two',
        figure: knownFigure(value, halfWidth, unit),
        ...(!isZero(halfWidth) && { more: showBand(halfWidth, unit) }),
      },
    ],
  };
}

const FOUND: Readonly<Record<Verdict['kind'], string>> = {
  good: 'good',
  'too-close': 'too close to call',
  'no-good': 'off its size',
};

function sayMeasured({ value, halfWidth, verdict }: Checked, unit: ShownUnit): string {
  return `measured ${knownFigure(value, halfWidth, unit)} ${showBand(halfWidth, unit)}: ${FOUND[verdict.kind]}`;
}

function clearanceTitle({ kind }: FitLimits): string {
  if (kind === 'clearance') return 'Always leaves room';
  return kind === 'interference' ? 'Always grips' : 'Room or grip, as they fall out';
}

function madeRow(what: string, made: Result<PartFor, FormRefusal>, unit: ShownUnit) {
  if (!made.ok) return { what, figure: 'none', more: sayFitRefusal(made.refusal, unit) };
  const { sure } = made.value;
  return {
    what,
    figure: sayLimits(made.value, unit),
    more: sure ? `sure from ${sayLimits(sure, unit)}` : 'the readings are too coarse to be sure of any',
  };
}
