import { cutName } from '../../engine/thread/tap-name.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { getCheck } from '../../store/kept/checks.ts';
import { getCut } from '../../store/kept/cuts.ts';
import { drawerPieces } from '../../store/kept/drawer.ts';
import { getFeature } from '../../store/kept/features.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { partsOf } from '../../store/kept/parts.ts';
import { stepsOf } from '../../store/kept/steps.ts';
import { getWorksheet } from '../../store/kept/worksheets.ts';
import type { PhotosOf } from './photo-address.ts';

/** What the fitter calls it; nothing once it is gone. */
export async function nameOfOwner(store: Store, { owner, jobId }: PhotosOf): Promise<string | undefined> {
  const { id } = owner;
  switch (owner.store) {
    case 'jobs':
      return (await getJob(store, id))?.name;
    case 'features':
      return (await getFeature(store, id))?.name;
    case 'worksheets':
      return (await getWorksheet(store, id))?.title;
    case 'cuts': {
      const cut = await getCut(store, id);
      return cut && cutName(cut);
    }
    case 'checks':
      return (await getCheck(store, id))?.name;
    case 'steps':
      return (await stepsOf(store, jobId ?? '')).find((step) => step.id === id)?.text;
    case 'parts':
      return (await partsOf(store, jobId ?? '')).find((part) => part.id === id)?.name;
    case 'drawer':
      return (await drawerPieces(store)).find(({ piece }) => piece.id === id)?.piece.name;
    default:
      return owner.store satisfies never;
  }
}
