import { typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { sizeFigure } from '../../reading/say-readings.ts';
import { zero } from '../../length/length.ts';
import { capital, uncapital } from '../../length/say-words.ts';
import { figure, showBand, type ShownUnit } from '../../length/show.ts';
import type { WhyLine } from '../account.ts';
import type { Share } from './chain.ts';
import { inWorkOrder, type LineUpAnswer, type LineUpQuestion } from './line-up.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import { sayDeed } from './say-deeds.ts';
import { sayShares } from './say-gives.ts';
import { sizeName, spacerLetter, spacerName } from './say-line-up-names.ts';
import { sideOf } from './say-line-up-shared.ts';

const CHECK_NAMES: Readonly<Record<LineUpCheck['kind'], string>> = {
  line: 'How far off',
  'pad-wear': 'Float beyond the pads’ wear',
  'disc-in-slot': 'Room beside the disc at either end of the float',
  'side-play': 'Side play of the bracket',
  'wheel-centre': 'Wheel centre',
  opening: 'Room left by the parts',
  float: 'Float',
  'wheel-place': 'Wheel’s place',
  'slot-middle': 'Slot’s middle off the disc’s',
};

/** Each length as its sum, with the numbers put in. */
export function whyOfLineUp(
  question: LineUpQuestion,
  answer: LineUpAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const sum = (terms: readonly Share[]) => {
    const given = terms.filter(({ of }) => question.layout.usual[of] !== 'nothing' || question.sizes[of]);
    const named = (name: string) => partOrSize(question, answer, name);
    const size = (name: string) => fittedOr(answer, name) ?? sizeOf(question, name);
    return `${sayShares(given, named)} = ${sayShares(given, (name) => numberPut(size(name), unit))}`;
  };
  return [
    ...answer.spacers.map((spacer) => {
      const letter = spacerLetter(spacer.name, question.layout);
      const name = spacerName(spacer.name, question);
      return {
        what: letter === '' ? name : `${letter}, ${name.toLowerCase()}`,
        how: `${sum(spacer.terms)} = ${figure(spacer.value, unit)} ${unit}, ${showBand(spacer.band.halfWidth, unit)}; ${showBand(spacer.worstCase, unit)} at the very worst`,
      };
    }),
    ...deedLines(question, answer, unit),
    ...[...answer.checks, ...answer.shared].map((check) => ({
      what: whatOf(check),
      how: `${check.direct ? `${sayShares(check.terms)} on the machine` : sum(check.terms)} = ${figure(check.value, unit)} ${unit}, ${showBand(check.band.halfWidth, unit)}`,
      source: check.limits.source,
    })),
    ...(answer.held.length > 0
      ? [
          {
            what: 'These lengths make it hold',
            how: answer.held.map((name) => HELD[name] ?? name).join('; '),
          },
        ]
      : []),
    ...(question.layout.hasSide && question.side === 'left' && question.layout.name !== 'trailer-hub'
      ? [
          {
            what: 'Brake on the left',
            how: 'The whole axle is turned over as in a mirror (offset changes its sign, the centre is taken from the hub’s other face), worked out, and turned back.',
          },
        ]
      : []),
    {
      what: 'Band',
      how: 'Every size counts by its share in the sum, at 95 %; a tool’s own error is common to all it read.',
      source: 'JCGM 100:2008',
    },
    {
      what: 'Float and room may be off',
      how: `Float ±${figure(question.limits.spacer.by, unit)}, filled room ±${figure(question.limits.opening.by, unit)} ${unit}; the parts still to be cut share what the band leaves of it, each left full to the dial’s next step. All of it holds when every one of them is off the worst way at once.`,
      source: question.limits.spacer.source,
    },
  ];
}

/** What is done for each spacer, at length, in the order of work. */
function deedLines(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): readonly WhyLine[] {
  const deeds = inWorkOrder(answer).flatMap((spacer) => {
    const { act, more } = sayDeed(spacer, unit);
    return more === '' ? [] : [{ what: `${spacerName(spacer.name, question)}: ${act}`, how: more }];
  });
  const hasDisc = question.layout.discs.length > 0;
  return [
    ...deeds,
    ...(hasDisc
      ? [
          {
            what: 'Order of work',
            how: 'Cut the spacer between bracket and leg last. Enter the others as you measured them: it is cut to them.',
          },
        ]
      : []),
    ...(hasDisc && question.slides === 'caliper'
      ? [
          {
            what: 'What the float is for',
            how: 'The caliper follows its pads by itself, so the bracket’s float is only freedom to turn.',
          },
        ]
      : []),
  ];
}

const HELD: Readonly<Record<string, string>> = {
  fills: 'the parts fill the room from face to face',
  'wheel centre': 'the wheel is where it is wanted',
  'disc in slot': 'the disc is in the middle of its slot, with the bracket in the middle of its float',
  'left disc in slot': 'the left disc is in the middle of its slot',
  'right disc in slot': 'the right disc is in the middle of its slot',
  'sprocket line': 'the sprocket is in line with the chain',
  'wheel face': 'the wheel’s face is where it is wanted',
};

function whatOf({ kind, name }: LineUpCheck): string {
  if (kind === 'line') return `${CHECK_NAMES.line}: ${name}`;
  return capital(kind === 'wheel-place' ? name : `${sideOf(name)}${uncapital(CHECK_NAMES[kind])}`);
}

function partOrSize(question: LineUpQuestion, answer: LineUpAnswer, name: string): string {
  return fittedOr(answer, name) ? spacerName(name, question).toLowerCase() : sizeName(name);
}

/** A spacer goes into a sum as it will lie on the axle. */
function fittedOr({ spacers }: LineUpAnswer, name: string): Estimate | undefined {
  const spacer = spacers.find((one) => one.name === name);
  return spacer && typedEstimate(spacer.fitted);
}

function sizeOf({ layout, sizes }: LineUpQuestion, name: string): Estimate {
  const stands = layout.usual[name];
  const instead = typeof stands === 'object' ? sizes[stands.as] : undefined;
  return sizes[name] ?? instead ?? typedEstimate(zero);
}

function numberPut(estimate: Estimate, unit: ShownUnit): string {
  const text = sizeFigure(estimate, unit);
  return text.startsWith('−') ? `(${text})` : text;
}
