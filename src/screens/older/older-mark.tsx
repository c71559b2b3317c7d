import { OLDER } from './older-than-sizes.ts';
import './older-mark.css';

/** Beside a figure that is older than its sizes: a word, a mark and an edge, the same everywhere. */
export function OlderMark() {
  return (
    <span class="older-mark">
      <svg viewBox="0 0 32 32" width="22" height="22" aria-hidden="true">
        <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="3.4" />
        <path d="M16 8v9l6 4" fill="none" stroke="currentColor" stroke-width="3.4" />
      </svg>
      <span>{OLDER}</span>
    </span>
  );
}
