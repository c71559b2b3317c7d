import { useState } from 'preact/hooks';
import { announce } from '../common/announce.ts';

/** Hands a file over, and says what became of it. */
export function useGive() {
  const [said, setSaid] = useState('');
  const tell = (sentence: string) => {
    setSaid(sentence);
    announce(sentence);
  };
  const give = async (file: () => Promise<File>) => {
    const { giveFile } = await import('../common/give-file.ts');
    tell(await giveFile(await file()));
  };
  return { said, tell, give };
}
