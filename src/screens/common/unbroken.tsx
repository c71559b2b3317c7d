import type { ComponentChildren } from 'preact';
import './unbroken.css';

// A thread, a mixed fraction, a range: 7/16-20, 1-13/32, 25–50; a figure and its unit: 10.56 mm, 75.9 %. Short ones only: a
// long piece could not stand on a narrow screen. And the words that say most in a line of small ones.
const PIECE =
  /(\b[\d./]{1,5}[-–][\d./]{1,5}\b|[\d.,/]{1,7} (?:mm|in|thou|%)(?!\w)|safety-critical|demo data)/;

/** Text whose sizes are not torn in two at a line's end. Anything but text is left as it is. */
export function unbroken(text: ComponentChildren): ComponentChildren {
  if (typeof text !== 'string' || !PIECE.test(text)) return text;
  return text.split(PIECE).map((piece, index) =>
    index % 2 === 1 ? (
      <span key={index} class="unbroken">
        {piece}
      </span>
    ) : (
      piece
    ),
  );
}
