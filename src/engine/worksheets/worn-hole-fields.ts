import { europeanMetals, materials } from '../material/tables/materials.ts';
import type { ChoiceField } from './fields.ts';

/** What every worksheet asks that opens a worn hole: where it goes. */
export const axisField = {
  enter: 'choice',
  label: 'Place of the finished hole',
  ask: 'Where does the middle of the finished hole go?',
  options: [
    { value: 'follows', words: 'Where the wear is', more: 'a reamer follows the hole that is there' },
    { value: 'old', words: 'On its old axis', more: 'bored from a located centre; takes more' },
  ],
} as const satisfies ChoiceField;

/** Every metal that has a table, for what a part is made of. */
export const metalOptions: ChoiceField['options'] = materials.map((metal) => ({
  value: metal.id,
  words: metal.name,
  ...(europeanMetals.includes(metal) && { ofMetricShop: true }),
}));
