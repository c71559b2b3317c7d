import { useState } from 'preact/hooks';
import type { Job } from '../../store/base/records.ts';
import { announce } from '../common/announce.ts';
import { useStore } from '../common/store-context.ts';

/** Hands one job over as a file, and says what became of it. */
export function useJobFile(job: Job) {
  const store = useStore();
  const [said, setSaid] = useState('');
  const give = async () => {
    const { giveJob } = await import('../shop/backup-file.ts');
    const sentence = await giveJob(store, job).catch(
      () => 'The file could not be written. Nothing here was changed.',
    );
    setSaid(sentence);
    announce(sentence);
  };
  return { said, give };
}
