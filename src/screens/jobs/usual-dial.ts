import { sameLength } from '../../engine/length/length.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { getSetting, putSetting } from '../../store/kept/settings.ts';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { usualDials } from '../common/use-dial.ts';

/**
 * On a phone without a job the unit brings the usual dial along, unless the shop has described its own. Later the unit of
 * the figures says nothing about the lathe.
 */
export async function takeUsualDial(store: Store, unit: ShownUnit): Promise<void> {
  const kept = await getSetting(store, 'dial');
  const isUsual = Object.values(usualDials).some(
    ({ reads, graduation }) =>
      kept?.reads === reads &&
      sameLength(kept.graduation.exact, graduation.exact) &&
      !kept.marksPerTurn &&
      !kept.compound &&
      !kept.leadScrew,
  );
  if (isUsual || (!kept && unit !== 'in')) await saidIfRefused(putSetting(store, 'dial', usualDials[unit]));
}
