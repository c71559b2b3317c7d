import { photosOf } from '../../store/kept/photos.ts';
import { useLive } from '../common/store-context.ts';
import { Picture } from './picture.tsx';
import './job-cover.css';

/** The newest photo of a job, small, for its line in the list; nothing where it has none. Fetched after the list stands. */
export function JobCover({ jobId }: { jobId: string }) {
  const photos = useLive(`photos/jobs/${jobId}`, ['photos'], (store) =>
    photosOf(store, { store: 'jobs', id: jobId }),
  );
  const last = photos?.at(-1);
  // It says nothing the line's words don't: a screen reader is spared it.
  return last ? <Picture class="job-cover" bytes={last.preview} mime={last.mime} says="" /> : null;
}
