import { useState } from 'preact/hooks';
import { announce } from './announce.ts';
import { Button } from './button.tsx';
import { giveRescue } from './give-rescue.ts';

/** For every place where something is the matter: a file with all that is kept. Part of the first load, it waits for no other. */
export function Rescue() {
  const [said, setSaid] = useState('');
  const save = async () => {
    const sentence = await giveRescue();
    setSaid(sentence);
    announce(sentence);
  };
  return (
    <>
      <p>A file with all your records can be saved meanwhile. Nothing is changed by it.</p>
      <Button onPress={() => save()}>Save a backup</Button>
      {said !== '' && <p role="status">{said}</p>}
    </>
  );
}
