type FindingMarkProps = { readonly what: 'stops' | 'stands' | 'known' };

const SPOKEN: Readonly<Record<FindingMarkProps['what'], string>> = {
  stops: 'stops the signing',
  stands: 'stands by a reason',
  known: 'to be known',
};

/** A bar for what stops the signing, a half-filled ring for what stands or is only to be known: the marks of a verdict. */
export function FindingMark({ what }: FindingMarkProps) {
  return (
    <svg
      class="finding-mark"
      data-what={what}
      viewBox="0 0 32 32"
      width="32"
      height="32"
      role="img"
      aria-label={SPOKEN[what]}
    >
      {what === 'stops' ? (
        <rect x="3" y="13" width="26" height="6" fill="currentColor" />
      ) : (
        <>
          <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="3.4" />
          <path d="M16 4a12 12 0 0 0 0 24z" fill="currentColor" />
        </>
      )}
    </svg>
  );
}
