import { useEffect, useState } from 'preact/hooks';

/** A phone held upright on which heading, drawing, pad and commit key leave no room: as the style sheets have it. */
export const SHORT_PHONE = '(orientation: portrait) and (max-height: 700px)';

/** Whether a media query holds, also after the phone was turned or the window became another size. */
export function useMedia(query: string): boolean {
  const [holds, setHolds] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const follow = () => setHolds(list.matches);
    follow();
    list.addEventListener('change', follow);
    return () => list.removeEventListener('change', follow);
  }, [query]);
  return holds;
}
