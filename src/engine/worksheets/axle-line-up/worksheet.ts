import { figure } from '../../length/show.ts';
import type { Assumed, CutPlace } from '../worksheet.ts';
import { worksheet } from '../worksheet.ts';
import { axleAccount, lengthsToMake } from './account.ts';
import { checksOfLineUp } from './checks-of-line-up.ts';
import { cutsOfLineUp } from './cuts-of-line-up.ts';
import {
  axleFields,
  axleFieldsFor,
  axleNeeds,
  axleSideOf,
  isAxleLayout,
  isAxleSize,
  onHandField,
  type AxleFields,
  type AxleGiven,
} from './fields.ts';
import { lineUp } from './line-up.ts';
import { getsOfLineUp } from './gets-of-line-up.ts';
import { axleLimits, axleQuestion } from './question.ts';
import { sayLineUpRefusal } from './say-line-up.ts';
import { spacerName } from './say-line-up-names.ts';
import { stepsOfLineUp } from './steps.ts';
import { axleLayouts } from './tables/axle-layouts.ts';
import type { LineUpLimit } from './tables/line-up-limits.ts';
import { axleWanted } from './wanted.ts';

/** The lengths of all spacers on an axle: wheel on centre, brake over its disc, bracket free on its sleeve. */
export const axleLineUpWorksheet = worksheet({
  name: 'Axle line-up',
  asks: 'Which spacers put the wheel on centre, and the brake over its disc?',
  fields: axleFields,
  fieldsFor: axleFieldsFor,
  needs: axleNeeds,
  starts: {},
  lacks: 'It needs to know what sits on the axle, and its sizes.',
  canKill: true,
  question: axleQuestion,
  answer: lineUp,
  sayRefusal: sayLineUpRefusal,
  assumed: axleAssumed,
  usual: usualWords,
  account: axleAccount,
  cuts: ({ question, answer }) => cutsOfLineUp(question, answer),
  cutsHoldAnyway: () => true,
  checks: ({ question }) => checksOfLineUp(question),
  makes: ({ question, answer }) =>
    lengthsToMake(answer).map(({ name, length }) => ({ name: spacerName(name, question), length })),
  steps: ({ question, answer, unit }) => stepsOfLineUp(question, answer, unit),
  gets: ({ question, answer, unit }, way) => getsOfLineUp(question, answer, { way, unit }),
  cutPlaces: spacersToCut,
  wanted: (given, _kind, name) => axleWanted(given, name),
  demo: {
    title: 'Front wheel in the fork',
    sizes: {
      width: '6.750 in',
      hub: '4.412 in',
      centre: '2.300 in',
      disc: '.312 in',
      slot: '.187 in',
      bracket: '1/2 in',
      float: '.010 in',
      slotWidth: '.300 in',
      discThickness: '.160 in',
    },
    choices: { layout: 'front-one-disc', side: 'right' },
  },
});

/** In the order of work, by the names their cuts have. */
function spacersToCut(given: AxleGiven): readonly CutPlace<keyof AxleFields>[] {
  const name = given.choice('layout');
  if (!isAxleLayout(name)) return [];
  const layout = axleLayouts[name];
  return layout.workOrder.flatMap((spacer) => {
    const field = onHandField(spacer);
    const part = spacerName(spacer, { layout, side: axleSideOf(given) }).toLowerCase();
    return isAxleSize(field) ? [{ field, part }] : [];
  });
}

function axleAssumed(given: AxleGiven): readonly Assumed<keyof AxleFields>[] {
  const name = given.choice('layout');
  if (!isAxleLayout(name)) return [];
  const { discs, usual } = axleLayouts[name];
  const isGiven = (size: string) => isAxleSize(size) && given.has(size);
  // Where slot or disc is missing nothing of the disc is judged.
  const unread = discs.flatMap(({ slotWidth, discThickness, discRunout }) =>
    isGiven(slotWidth) && isGiven(discThickness) && !isGiven(discRunout) ? [discRunout] : [],
  );
  const alike = Object.entries(usual).flatMap(([size, stands]) =>
    stands === 'nothing' || isGiven(size) ? [] : [size],
  );
  const first = (sizes: readonly string[], words: string) =>
    sizes
      .filter(isAxleSize)
      .slice(0, 1)
      .map((field) => ({ field, words }));
  return [
    ...(discs.length > 0
      ? [{ field: 'slides', words: 'caliper follows its pads', asked: 'What follows the pads?' } as const]
      : []),
    ...first(alike, 'right as left'),
    ...first(unread, 'disc runout'),
    ...(name === 'rear-sprocket' ? [{ field: 'first', words: 'wheel centre first' } as const] : []),
  ];
}

/** What stands in for what was not given. */
function usualWords(given: AxleGiven): Readonly<Record<string, string>> {
  const { spacer, opening, line, wearMargin, discClearance, discRunout } = axleLimits(given);
  const usual = ({ by, source }: LineUpLimit, sign = '') =>
    `usual: ${sign}${figure(by, given.unit)} (${source})`;
  const onEachSide = (names: readonly string[], words: string) =>
    Object.fromEntries(
      names.flatMap((name) => {
        const rest = `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
        return [name, `left${rest}`, `right${rest}`].map((one) => [one, words] as const);
      }),
    );
  return {
    offset: 'none: in the middle',
    ...Object.fromEntries(
      ['Slot', 'Bracket', 'Float'].map((one) => [`right${one}`, 'as on the left'] as const),
    ),
    first: 'the wheel on its centre',
    ...(given.choice('slides') === 'bracket' && { padWear: 'needed to judge the float' }),
    spacerLimit: usual(spacer, '±'),
    openingLimit: usual(opening, '±'),
    lineLimit: usual(line, '±'),
    wearMargin: usual(wearMargin),
    discClearance: usual(discClearance),
    ...onEachSide(['discRunout'], `not read: ${figure(discRunout.by, given.unit)} is counted`),
    ...onEachSide(['slotWidth', 'discThickness'], 'needed: the disc may rub'),
    ...Object.fromEntries(
      Object.keys(axleFields)
        .filter((name) => name.startsWith('onHand-'))
        .map((name) => [name, 'none: make it'] as const),
    ),
    anchor: 'not named yet',
  };
}
