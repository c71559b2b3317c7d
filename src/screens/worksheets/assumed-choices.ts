import { capital } from '../../engine/length/say-words.ts';
import { sayAssumed } from '../../engine/reading/say-assumed.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { isAxleLayout } from './axle-line-up-plan.ts';
import { USUAL_RAKE_WITHIN_DEGREES } from './steering-geometry-question.ts';
import { LEG_NAMES } from './thread-engagement-plan.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** Something nobody said: the field that changes it, and in few words what stands in for it. */
export type Assumed = { readonly field: string; readonly words: string };

type Inputs = Pick<WorksheetData['worksheet'], 'kind' | 'choices' | 'sizes'>;

/**
 * What a worksheet's answer takes for granted as nobody has chosen it, in the order in which it matters. Limits that are
 * common practice are none of it: they are shown with their source.
 */
export function assumedChoices({ worksheet }: Pick<WorksheetData, 'worksheet'>): readonly Assumed[] {
  return (ASSUMED[worksheet.kind]?.(worksheet) ?? []).filter(
    ({ field }) => worksheet.choices[field] === undefined && worksheet.sizes[field] === undefined,
  );
}

/** `Assumed: float`, for the row of that field; undefined where nothing is taken for granted. */
export function assumedFor(data: Pick<WorksheetData, 'worksheet'>, field: string): string | undefined {
  const assumed = assumedChoices(data).find((one) => one.field === field);
  return assumed && capital(sayAssumed([assumed.words]));
}

/** Only for the clamp load, which stands beside the manual's torque. */
export function isDryAssumed({ worksheet }: Pick<WorksheetData, 'worksheet'>): boolean {
  return worksheet.choices['nutFactor'] === undefined;
}

const ASSUMED: Readonly<Record<string, (worksheet: Inputs) => readonly Assumed[]>> = {
  'spacer-stack': () => [{ field: 'want', words: 'float' }],
  ring: () => [{ field: 'locates', words: 'the recess locates it' }],
  'thread-insert': ({ choices }) => [
    { field: 'metal', words: 'aluminium' },
    { field: 'bottom', words: 'through hole' },
    ...(choices['bottom'] === 'blind' ? [{ field: 'tap', words: 'bottoming tap' }] : []),
  ],
  bushing: () => [{ field: 'condition', words: 'not hardened or plated' }],
  'thread-engagement': ({ choices, sizes }) => [
    { field: 'insert', words: 'no insert' },
    ...(LEG_NAMES.some((name) => sizes[name] !== undefined)
      ? [
          { field: 'held', words: 'bolt into the part' },
          ...(choices['held'] === 'nut' || choices['held'] === 'stud'
            ? [{ field: 'nutHeight', words: 'usual nut' }]
            : []),
        ]
      : []),
  ],
  'bearing-seat': ({ choices }) =>
    choices['bearing'] === undefined ? [] : [{ field: 'mockUp', words: 'the real bearing' }],
  'axle-line-up': axleAssumed,
  'steering-geometry': () => [{ field: 'rakeWithin', words: `rake to ±${USUAL_RAKE_WITHIN_DEGREES}°` }],
};

function axleAssumed({ choices, sizes }: Inputs): readonly Assumed[] {
  const name = choices['layout'];
  if (!isAxleLayout(name)) return [];
  const { discs, usual } = axleLayouts[name];
  // Where slot or disc is missing nothing of the disc is judged.
  const unread = discs.flatMap(({ slotWidth, discThickness, discRunout }) =>
    sizes[slotWidth] && sizes[discThickness] && !sizes[discRunout] ? [discRunout] : [],
  );
  const alike = Object.entries(usual).flatMap(([size, stands]) =>
    stands === 'nothing' || sizes[size] ? [] : [size],
  );
  return [
    ...alike.slice(0, 1).map((field) => ({ field, words: 'right as left' })),
    ...unread.slice(0, 1).map((field) => ({ field, words: 'disc runout' })),
    ...(name === 'rear-sprocket' ? [{ field: 'first', words: 'wheel centre first' }] : []),
  ];
}
