import { WriteLine } from './sheet-table.tsx';

const BLANK_LINES = ['first', 'second', 'third', 'fourth'] as const;

/** Lines to sign and to write on. */
export function SigningSheet() {
  return (
    <section class="sheet-section sheet-signing">
      <h3>Sign-off</h3>
      <WriteLine label="Put together by" />
      <WriteLine label="Checked by" />
      <WriteLine label="Licence or stamp" />
      <WriteLine label="Date" />
      <p>Notes</p>
      {BLANK_LINES.map((line) => (
        <WriteLine key={line} label="" />
      ))}
    </section>
  );
}
