import { bushing } from '../../engine/press/bushing.ts';
import { isZero } from '../../engine/length/length.ts';
import {
  lineUp,
  type LineUpAnswer,
  type LineUpQuestion,
} from '../../engine/worksheets/axle-line-up/line-up.ts';
import { sayHeatWay } from '../../engine/press/say-bushing.ts';
import {
  sizeName,
  spacerLetter,
  spacerName,
} from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { show } from '../../engine/length/show.ts';
import { threadInsert } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import type { AssemblyStep } from '../../store/records.ts';
import { axleLineUpQuestion } from '../worksheets/axle-line-up-question.ts';
import { bushingQuestion } from '../worksheets/bushing-question.ts';
import { stackParts } from '../worksheets/spacer-stack-question.ts';
import { threadInsertQuestion } from '../worksheets/thread-insert-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { capital, listed } from '../../engine/length/say-words.ts';

export type StepOffer = Pick<AssemblyStep, 'text'> &
  Partial<Pick<AssemblyStep, 'orientation' | 'torque' | 'worksheetId'>>;

/** The steps a worksheet's answer puts into an order; none for a kind that has none, or that lacks a size still. */
export function stepsFromWorksheet(data: WorksheetData): readonly StepOffer[] {
  switch (data.worksheet.kind) {
    case 'spacer-stack':
      return stackSteps(data);
    case 'axle-line-up':
      return axleSteps(data);
    case 'thread-insert':
      return insertSteps(data);
    case 'bushing':
      return bushingSteps(data);
    default:
      return [];
  }
}

type Laid = { readonly name: string; readonly size?: string };

/** The whole order with its drawing first, then a step for each part with its neighbours. */
function laidSteps(inOrder: readonly Laid[], where: string, worksheetId: string): readonly StepOffer[] {
  const names = inOrder.map(({ name }) => name);
  const first: StepOffer = {
    text: `Stack in this order, from the left ${where}: ${names.join(', ')}`,
    worksheetId,
  };
  const each = inOrder.map(({ name, size }, index) => ({
    text: `Fit ${withArticle(name)}${size === undefined ? '' : `, ${size}`}`,
    orientation: neighbours(names, index),
  }));
  return [first, ...each];
}

function neighbours(names: readonly string[], index: number): string {
  const before = names[index - 1];
  const after = names[index + 1];
  if (before === undefined)
    return after === undefined ? 'alone' : `first from the left, before ${withArticle(after)}`;
  return after === undefined
    ? `last, after ${withArticle(before)}`
    : `between ${withArticle(before)} and ${withArticle(after)}`;
}

/** "the washer", but "part 1" and "spacer A". */
function withArticle(name: string): string {
  return /^(part|spacer) [\dA-Z]+\b/.test(name) ? name : `the ${name}`;
}

function stackSteps(data: WorksheetData): readonly StepOffer[] {
  const parts = stackParts(data);
  if (parts.length === 0) return [];
  const inOrder = parts.map(({ input }) => ({
    name: input.count > 1 ? `${input.name} (${input.count} pieces)` : input.name,
  }));
  return laidSteps(inOrder, `on the ${data.worksheet.choices['fixedName'] ?? 'sleeve'}`, data.worksheet.id);
}

function axleSteps(data: WorksheetData): readonly StepOffer[] {
  const question = axleLineUpQuestion(data);
  const result = question && lineUp(question);
  if (!question || result?.ok !== true) return [];
  const where = question.layout.name === 'trailer-hub' ? 'at the shoulder' : 'between the legs';
  const torque = { typed: '', unit: data.unit === 'in' ? 'lbf-ft' : 'Nm', source: '' } as const;
  return [
    ...cutLastSteps(result.value, question),
    ...laidSteps(axleOrder(result.value, question, data), where, data.worksheet.id),
    ...sleeveSteps(result.value, question, data),
    { text: 'Tighten the axle nut', torque },
    { text: 'Turn the wheel: it runs free, the brake lets go' },
  ];
}

// A float is room, not a part; a spacer that comes out at nothing isn't there.
function axleOrder(answer: LineUpAnswer, question: LineUpQuestion, data: WorksheetData): readonly Laid[] {
  const spacerNamed = (name: string) => answer.spacers.find((one) => one.name === name);
  return answer.parts
    .filter(({ name, length }) => !name.includes('float') && !isZero(spacerNamed(name)?.fitted ?? length))
    .map(({ name }) => {
      const spacer = spacerNamed(name);
      if (!spacer) return { name: sizeName(name) };
      const letter = spacerLetter(name, question.layout);
      const called = spacerName(name, question).toLowerCase();
      return {
        name: isPlace(called) ? `spacer ${letter} (${called})` : called,
        // One that is cut last has no length yet: its step before this one gives it one.
        ...(spacer.deed.kind !== 'last' && { size: show(spacer.fitted, data.unit) }),
      };
    });
}

// A sleeve runs through others, so it has no place of its own in the row.
function sleeveSteps(
  answer: LineUpAnswer,
  question: LineUpQuestion,
  data: WorksheetData,
): readonly StepOffer[] {
  return answer.spacers
    .filter(({ name }) => !answer.parts.some((part) => part.name === name))
    .map(({ name, fitted }) => ({
      text: `Put the ${spacerName(name, question).toLowerCase()} through its bracket, ${show(fitted, data.unit)}`,
    }));
}

/** What is cut to the others is measured and cut before anything goes on the axle. */
function cutLastSteps({ spacers }: LineUpAnswer, question: LineUpQuestion): readonly StepOffer[] {
  return spacers.flatMap(({ name, deed }) =>
    deed.kind === 'last'
      ? [
          {
            text: `Measure ${listed(deed.after.map((one) => spacerName(one, question).toLowerCase()))}; cut ${spacerName(name, question).toLowerCase()} last, to them`,
          },
        ]
      : [],
  );
}

/** "Hub to bracket" says where a spacer sits, not what it is. */
function isPlace(called: string): boolean {
  return !called.includes('spacer') && !called.includes('sleeve');
}

function insertSteps(data: WorksheetData): readonly StepOffer[] {
  const question = threadInsertQuestion(data);
  const result = question && threadInsert(question);
  if (!question || result?.ok !== true) return [];
  const { setDown } = result.value;
  const thread = question.thread.designation.replace('x', ' × ');
  return [
    { text: 'Clean the tapped hole, no chip and no oil in it', worksheetId: data.worksheet.id },
    {
      text: `Wind the ${thread} insert in`,
      orientation: `its first turn ${show(setDown.least, data.unit)} to ${show(setDown.most, data.unit)} below the face`,
    },
    { text: 'Break the tang off and take it out of the hole' },
  ];
}

function bushingSteps(data: WorksheetData): readonly StepOffer[] {
  const question = bushingQuestion(data);
  const result = question && bushing(question);
  if (!question || result?.ok !== true) return [];
  const { heat, mostHeat } = result.value;
  const way = heat.find(({ allowed }) => allowed);
  const drop = way && sayHeatWay(way, mostHeat, data.unit).title;
  return [
    { text: 'Deburr and clean the reamed bore and the bushing', worksheetId: data.worksheet.id },
    drop === undefined
      ? { text: 'Press the bushing in, square and in one go' }
      : {
          text: `${capital(drop)} and drop the bushing in`,
          orientation: 'insulated gloves on; square, oil hole over oil hole where it has one',
        },
    { text: 'Let it come back to shop temperature, then measure the bore again' },
  ];
}
