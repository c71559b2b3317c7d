import { useEffect, useState } from 'preact/hooks';
import { addressOf, type Address } from './address.ts';

/** Where the fitter is, by the address bar. */
export function useAddress(): Address {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const follow = () => setHash(location.hash);
    // An address that changed between the first drawing and this line has sent its event already.
    follow();
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return addressOf(hash);
}
