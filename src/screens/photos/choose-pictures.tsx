import { useRef, useState } from 'preact/hooks';
import { Button } from '../common/button.tsx';
import { readPicture, sayUnread, type Unread } from './read-picture.ts';
import type { ShrunkPhoto } from './shrink-photo.ts';

type ChoosePicturesProps = {
  readonly main?: boolean;
  /** Keeps it; the sentence that comes back says why it could not, and is empty where it could. */
  readonly onPicture: (picture: ShrunkPhoto) => Promise<string>;
  /** What went wrong with all that were chosen, told once at the end. */
  readonly onTrouble: (sentence: string) => void;
};

/** Pictures the phone already has, one after the other. */
export function ChoosePictures({ main = false, onPicture, onTrouble }: ChoosePicturesProps) {
  const field = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState(false);
  const take = async (files: readonly File[]) => {
    setBusy(true);
    const unread: Unread[] = [];
    let refused = '';
    let left = files.length;
    for (const file of files) {
      // One picture at a time: a phone has no memory for ten.
      // oxlint-disable-next-line no-await-in-loop
      const read = await readPicture(file);
      if (!read.ok) unread.push(read);
      // oxlint-disable-next-line no-await-in-loop
      else refused = await onPicture(read.value);
      // The next one would meet the same full disk.
      if (refused !== '') break;
      left -= 1;
    }
    onTrouble([refused, refused && sayLeft(left, files.length), sayUnread(unread)].filter(Boolean).join(' '));
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

function sayLeft(left: number, all: number): string {
  return all === 1 ? '' : `${left} of the ${all} pictures ${left === 1 ? 'was' : 'were'} not kept.`;
}
