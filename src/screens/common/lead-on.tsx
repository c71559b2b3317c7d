import { useEffect } from 'preact/hooks';
import { leadTo, type Address } from '../address.ts';
import { Page } from './page.tsx';

/** An address that names a thing under another job than its own: what was done there would count for the wrong job. */
export function LeadOn({ to }: { to: Address }) {
  useEffect(() => leadTo(to), []);
  return <Page title=" ">{null}</Page>;
}
