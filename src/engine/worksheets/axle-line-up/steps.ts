import { isZero } from '../../length/length.ts';
import { listed } from '../../length/say-words.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { laidSteps, type Laid } from '../laid-steps.ts';
import type { StepOffer } from '../worksheet.ts';
import type { LineUpAnswer, LineUpQuestion } from './line-up.ts';
import { sizeName, spacerLetter, spacerName } from './say-line-up-names.ts';

/** What goes on the axle in its order; what is cut last is measured and cut before anything does. */
export function stepsOfLineUp(
  question: LineUpQuestion,
  answer: LineUpAnswer,
  unit: ShownUnit,
): readonly StepOffer[] {
  const where = question.layout.name === 'trailer-hub' ? 'at the shoulder' : 'between the legs';
  return [
    ...cutLastSteps(question, answer),
    ...laidSteps(axleOrder(question, answer, unit), where),
    ...sleeveSteps(question, answer, unit),
    { text: 'Tighten the axle nut', torqueIn: unit === 'in' ? 'lbf-ft' : 'Nm' },
    { text: 'Turn the wheel: it runs free, the brake lets go' },
  ];
}

// A float is room, not a part; a spacer that comes out at nothing isn't there.
function axleOrder(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): readonly Laid[] {
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
        size: spacer.deed.kind === 'last' ? undefined : show(spacer.fitted, unit),
      };
    });
}

// A sleeve runs through others, so it has no place of its own in the row.
function sleeveSteps(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): readonly StepOffer[] {
  return answer.spacers
    .filter(({ name }) => !answer.parts.some((part) => part.name === name))
    .map(({ name, fitted }) => ({
      text: `Put the ${spacerName(name, question).toLowerCase()} through its bracket, ${show(fitted, unit)}`,
    }));
}

/** What is cut to the others is measured and cut before anything goes on the axle. */
function cutLastSteps(question: LineUpQuestion, { spacers }: LineUpAnswer): readonly StepOffer[] {
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
