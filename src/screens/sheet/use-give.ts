import { useState } from 'preact/hooks';
import { announce } from '../common/announce.ts';
import { giveFile } from '../common/give-file.ts';

/** Hands a file over, and says what became of it. */
export function useGive() {
  const [said, setSaid] = useState('');
  const tell = (sentence: string) => {
    setSaid(sentence);
    announce(sentence);
  };
  const give = async (file: () => Promise<File>) => {
    tell(await giveFile(await file()));
  };
  return { said, tell, give };
}
