import { undoableStores } from '../../store/base/stores.ts';
import { hasConflicts } from '../../store/kept/open-work.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';

/** The way to what two phones wrote differently; only while there is any. What lists it is fetched when it is asked. */
export function BothLine() {
  const open = useLive('both', [...undoableStores, 'conflicts'], async (store) => {
    if (!(await hasConflicts(store))) return 0;
    const { openConflicts } = await import('../../store/phones/conflicts-open.ts');
    return (await openConflicts(store)).length;
  });
  if (!open) return null;
  return (
    <Row
      href={hrefOf({ at: 'shop', field: 'both' })}
      title="Two phones differ"
      detail={open === 1 ? 'in one thing: which one is it?' : `in ${open} things: which ones are they?`}
    />
  );
}
