import type { CutState } from '../../store/base/records.ts';
import { STATE_WORDS } from './cut-words.ts';
import './cut-mark.css';

/**
 * The state of a cut, never by colour alone. Still to cut: an open square; cutting: half of it filled; to size: a ring with
 * a dot; over: a bar; scrapped: a cross; made again: an arrow back.
 */
export function CutMark({ state, spoken = true }: { state: CutState; spoken?: boolean }) {
  return (
    <svg
      class={`cut-mark cut-mark-${state}`}
      viewBox="0 0 32 32"
      width="32"
      height="32"
      {...(spoken ? { role: 'img' as const, 'aria-label': STATE_WORDS[state] } : { 'aria-hidden': true })}
    >
      {(state === 'to-cut' || state === 'cutting') && (
        <rect x="5" y="5" width="22" height="22" fill="none" stroke="currentColor" stroke-width="3.4" />
      )}
      {state === 'cutting' && <path d="M5 5h11v22H5z" fill="currentColor" />}
      {state === 'to-size' && (
        <>
          <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="3.4" />
          <circle cx="16" cy="16" r="5.6" fill="currentColor" />
        </>
      )}
      {state === 'over' && <rect x="3" y="13" width="26" height="6" fill="currentColor" />}
      {state === 'scrapped' && (
        <path d="M6 6l20 20M26 6L6 26" fill="none" stroke="currentColor" stroke-width="3.8" />
      )}
      {state === 'made-again' && (
        <path
          d="M26 16a10 10 0 1 1-3.4-7.5M24 3v6.5h-6.5"
          fill="none"
          stroke="currentColor"
          stroke-width="3.2"
        />
      )}
    </svg>
  );
}
