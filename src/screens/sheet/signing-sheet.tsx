import { WriteLine } from './sheet-table.tsx';
import { dayOf } from './sheet-words.ts';

/** Who signs the job off on the phone, and when, where the phone knows the day. */
export type Signer = { readonly by: string; readonly at?: number };

/** Lines to sign and to write on. Whoever signed on the phone stands there; whoever checks it signs by hand. */
export function SigningSheet({ signer }: { readonly signer?: Signer | undefined }) {
  return (
    <section class="sheet-section sheet-signing">
      <h3>Sign-off</h3>
      <div class="sheet-signing-lines">
        <WriteLine label="Put together by" known={signer?.by} />
        <WriteLine label="Checked by" />
        <WriteLine label="Licence or stamp" />
        <WriteLine label="Date" known={signer?.at === undefined ? undefined : dayOf(signer.at)} />
      </div>
      <WriteLine label="Notes" />
      <WriteLine label="" />
    </section>
  );
}
