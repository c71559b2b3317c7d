import { useEffect, useState } from 'preact/hooks';
import { canBeShown } from '../../store/base/picture-size.ts';

type PictureProps = {
  readonly bytes: ArrayBuffer;
  readonly mime: string;
  /** What is to be seen on it, for whoever can't see it; empty where the words stand beside it. */
  readonly says: string;
  readonly class: string;
  /** Its own size, where it is shown whole. */
  readonly size?: { readonly width: number; readonly height: number };
};

/** A kept picture. The browser is lent its bytes under an address that is taken back when the picture goes. */
export function Picture({ bytes, mime, says, class: className, size }: PictureProps) {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    // A file from elsewhere may have brought it: the browser is handed nothing that would fill the phone's memory.
    if (!canBeShown(bytes)) return undefined;
    const lent = URL.createObjectURL(new Blob([bytes], { type: mime }));
    setUrl(lent);
    return () => URL.revokeObjectURL(lent);
  }, [bytes, mime]);
  // The frame is there before the picture is: nothing moves when it comes.
  if (url === undefined) return <span class={className} />;
  return <img class={className} src={url} alt={says} width={size?.width} height={size?.height} />;
}
