import { useRef, useState } from 'preact/hooks';
import { Button } from '../common/button.tsx';
import { readPicture } from './read-picture.ts';
import type { ShrunkPhoto } from './shrink-photo.ts';

type ChoosePicturesProps = {
  readonly main?: boolean;
  readonly onPicture: (picture: ShrunkPhoto) => Promise<boolean>;
  readonly onTrouble: (sentence: string) => void;
};

/** Pictures the phone already has, one after the other. */
export function ChoosePictures({ main = false, onPicture, onTrouble }: ChoosePicturesProps) {
  const field = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState(false);
  const take = async (files: readonly File[]) => {
    setBusy(true);
    for (const file of files) {
      // One picture at a time: a phone has no memory for ten.
      // oxlint-disable-next-line no-await-in-loop
      const read = await readPicture(file);
      if (!read.ok) onTrouble(read.sentence);
      // oxlint-disable-next-line no-await-in-loop
      if (!read.ok || !(await onPicture(read.value))) break;
    }
    setBusy(false);
  };
  return (
    <>
      <Button kind={main ? 'main' : 'plain'} disabled={busy} onPress={() => field.current?.click()}>
        {busy ? 'Reading…' : 'From the phone'}
      </Button>
      {/* Without `capture`: with it Android leaves for the camera app, and may close the page meanwhile for its memory. */}
      <input
        ref={field}
        type="file"
        accept="image/*"
        multiple
        hidden
        aria-label="Pictures from the phone"
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])];
          currentTarget.value = ''; // the same picture can be chosen again after one was removed
          if (files.length > 0) void take(files);
        }}
      />
    </>
  );
}
