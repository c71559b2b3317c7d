import { isLess, type Length } from '../../length/length.ts';
import { familyOf, standardReamers, type Reamer, type ShopFamily } from '../../fit/tables/reamer-sizes.ts';

/** Those of the shop's own family before the others, each family in the order it came. */
export function shopFirst<One>(
  all: readonly One[],
  family: (one: One) => ShopFamily,
  shop: ShopFamily | undefined,
): readonly One[] {
  if (shop === undefined) return all;
  return [...all.filter((one) => family(one) === shop), ...all.filter((one) => family(one) !== shop)];
}

/**
 * The standard reamers a bore can be opened with: the shop's own least one first, then the least of the other family where
 * that takes less of the part.
 */
export function reamersFrom(needs: Length, shop: ShopFamily | undefined): readonly Reamer[] {
  const reaching = standardReamers.filter(({ size }) => !isLess(size, needs));
  const [least] = reaching;
  const own = reaching.find((reamer) => familyOf(reamer) === shop);
  if (!least || !own || own === least) return least ? [least] : [];
  return [own, least];
}
