import { innerSleeve } from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import { targetBetween } from '../../engine/length/target-between.ts';
import { bushing } from '../../engine/press/bushing.ts';
import type { Length } from '../../engine/length/length.ts';
import { lineUp } from '../../engine/worksheets/axle-line-up/line-up.ts';
import type { SpacerDeed } from '../../engine/worksheets/axle-line-up/line-up-spacer.ts';
import { worksheets } from '../../engine/worksheets/all-worksheets.ts';
import type { RoundPart } from '../../engine/worksheets/worksheet.ts';
import { spacerName } from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { spacerStack } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { axleLineUpQuestion } from '../worksheets/axle-line-up-question.ts';
import { bearingQuestion } from '../worksheets/bearing-seat-question.ts';
import { bushingQuestion } from '../worksheets/bushing-question.ts';
import { givenOf } from '../worksheets/given-of.ts';
import { spacerStackQuestion } from '../worksheets/spacer-stack-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

/** A round part a worksheet asks to be made. A stack knows only lengths: the diameters are the fitter's to give. */
export type RoundPartWanted = RoundPart;

/** The round parts that are still to be made by a worksheet's answer. */
export function roundPartsOf(data: WorksheetData): readonly RoundPartWanted[] {
  switch (data.worksheet.kind) {
    case 'ring':
      return worksheets.ring.makes(givenOf(data));
    case 'bushing':
      return bushingToMake(data);
    case 'spacer-stack':
      return stackPartsToMake(data);
    case 'axle-line-up':
      return axleSpacersToMake(data);
    case 'bearing-seat':
      return sleeveToMake(data);
    default:
      return [];
  }
}

/**
 * As it is turned: its outside, and its bore before it is pressed in where that is known. A drawing needs one size: the
 * one that its cut names.
 */
function bushingToMake(data: WorksheetData): readonly RoundPartWanted[] {
  const question = bushingQuestion(data);
  const answer = question && bushing(question);
  if (!question || answer?.ok !== true) return [];
  const { turnTo, insideTo, insideBefore } = answer.value;
  const { length } = question;
  return [
    {
      name: 'Bushing',
      outside: turnTo,
      inside: insideBefore ? targetBetween(insideBefore, 'bore', question.step) : insideTo,
      ...(length && { length }),
    },
  ];
}

function stackPartsToMake(data: WorksheetData): readonly RoundPartWanted[] {
  const question = spacerStackQuestion(data);
  if (!question) return [];
  const { trims, longerParts, newPart, shim } = spacerStack(question);
  return [
    ...trims.flatMap(({ part, result }) => (result.ok ? [{ name: part, length: result.value.to }] : [])),
    ...longerParts
      .filter(({ mayGive }) => mayGive)
      .map(({ part, to }) => ({ name: `${part}, longer`, length: to })),
    ...(newPart ? [{ name: 'One more spacer', length: newPart.to }] : []),
    ...(shim && !newPart ? [{ name: 'Shim', length: shim.thickness }] : []),
  ];
}

function axleSpacersToMake(data: WorksheetData): readonly RoundPartWanted[] {
  const question = axleLineUpQuestion(data);
  const answer = question && lineUp(question);
  if (!question || answer?.ok !== true) return [];
  return answer.value.spacers.flatMap(({ name, deed }) => {
    const length = lengthToMake(deed);
    return length ? [{ name: spacerName(name, question), length }] : [];
  });
}

function lengthToMake(deed: SpacerDeed): Length | undefined {
  switch (deed.kind) {
    case 'make':
    case 'shim':
      return deed.make.ok ? deed.make.value.to : undefined;
    case 'trim':
      return deed.cut.ok ? deed.cut.value.to : undefined;
    case 'no-room':
    case 'none':
    case 'leave-out':
    case 'too-short':
    case 'last':
    case 'keep':
    case 'too-close':
      return undefined;
    default:
      return deed satisfies never;
  }
}

function sleeveToMake(data: WorksheetData): readonly RoundPartWanted[] {
  const question = bearingQuestion(data);
  if (question?.kind !== 'ball') return [];
  const answer = innerSleeve(question.ask);
  return answer.ok ? [{ name: 'Inner sleeve', length: answer.value.make.target }] : [];
}
