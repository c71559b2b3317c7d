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
import type { Id, PhotoOwner } from '../../store/base/records.ts';
import type { PhotosOf } from './photo-address.ts';

/** What the fitter calls it; nothing once it or its job is gone, and nothing under another job than its own. */
export async function nameOfOwner(store: Store, { owner, jobId }: PhotosOf): Promise<string | undefined> {
  if (owner.store === 'drawer') return jobId === undefined ? nameOfPiece(store, owner.id) : undefined;
  const job = jobId === undefined ? undefined : await getJob(store, jobId);
  const found = job && (await ofAJob(store, { store: owner.store, id: owner.id, jobId: job.id }));
  return found?.jobId === job?.id ? found?.name : undefined;
}

async function nameOfPiece(store: Store, id: Id): Promise<string | undefined> {
  return (await drawerPieces(store)).find(({ piece }) => piece.id === id)?.piece.name;
}

type Named = { readonly jobId: Id; readonly name: string };
type OfAJob = {
  readonly store: Exclude<PhotoOwner['store'], 'drawer'>;
  readonly id: Id;
  readonly jobId: Id;
};

async function ofAJob(store: Store, { store: kept, id, jobId }: OfAJob): Promise<Named | undefined> {
  switch (kept) {
    case 'jobs': {
      const job = await getJob(store, id);
      return job && { jobId: id, name: job.name };
    }
    case 'features':
      return getFeature(store, id);
    case 'worksheets': {
      const worksheet = await getWorksheet(store, id);
      return worksheet && { jobId: worksheet.jobId, name: worksheet.title };
    }
    case 'cuts': {
      const cut = await getCut(store, id);
      return cut && { jobId: cut.jobId, name: cutName(cut) };
    }
    case 'checks':
      return getCheck(store, id);
    case 'steps': {
      const step = (await stepsOf(store, jobId)).find((one) => one.id === id);
      return step && { jobId, name: step.text };
    }
    case 'parts':
      return (await partsOf(store, jobId)).find((part) => part.id === id);
    default:
      return kept satisfies never;
  }
}
