import { inShopWords, recordInShopWords } from '../length/american-words.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Field, Fields } from './fields.ts';

// The fields of a kind are the same records at every key: their words are made once.
const keptFields: Readonly<Record<ShownUnit, WeakMap<Fields, Fields>>> = {
  in: new WeakMap<Fields, Fields>(),
  mm: new WeakMap<Fields, Fields>(),
};

/** The fields in the words of the shop, and what is bought by its own names first. */
export function fieldsInShop(fields: Fields, unit: ShownUnit): Fields {
  const kept = keptFields[unit];
  const made = kept.get(fields) ?? recordInShopWords(inShopOrder(fields, unit), unit);
  kept.set(fields, made);
  return made;
}

/** Of a list of choices those that go by the shop's own names first, each group in its own order. */
function inShopOrder(fields: Fields, unit: ShownUnit): Fields {
  const isLast = (option: { readonly ofMetricShop?: true }) =>
    (option.ofMetricShop === true) === (unit === 'in');
  const inOrder = (field: Field): Field =>
    field.enter === 'choice' && field.options.some(({ ofMetricShop }) => ofMetricShop)
      ? { ...field, options: field.options.toSorted((a, b) => Number(isLast(a)) - Number(isLast(b))) }
      : field;
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, inOrder(field)]));
}

/** What stands for a field that is not given, in the same words. */
export function usualInShop(usual: Readonly<Partial<Record<string, string>>>, unit: ShownUnit): typeof usual {
  return Object.fromEntries(
    Object.entries(usual).map(([field, said]) => [
      field,
      said === undefined ? undefined : inShopWords(said, unit),
    ]),
  );
}
