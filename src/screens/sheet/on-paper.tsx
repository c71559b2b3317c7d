import type { ComponentChildren } from 'preact';
import { usePageFooter } from './use-page-footer.ts';
import './on-paper.css';

type OnPaperProps = { readonly name: string; readonly children: ComponentChildren };

// More than any sheet has; those behind its end are cut off.
const MOST_PAGES = 60;

/**
 * What is printed, with the job on each page and, where the browser counts them for us, its number. Chromium has boxes in
 * the margin for both. Firefox repeats a fixed foot and prints the number itself. WebKit does neither, but puts one tall
 * mark of a column on each page: they stand at its edge.
 */
export function OnPaper({ name, children }: OnPaperProps) {
  usePageFooter(name);
  const marks = marksByEngine();
  return (
    <div class="on-paper" data-marks={marks}>
      {children}
      {marks === 'foot' && (
        <p class="on-paper-foot" aria-hidden="true">
          {name}
        </p>
      )}
      {marks === 'edge' && (
        <div class="on-paper-edge" aria-hidden="true">
          {Array.from({ length: MOST_PAGES }, (_, page) => (
            <div key={page}>
              <span>{`${name} · page ${page + 1}`}</span>
            </div>
          ))}
        </div>
      )}
    </div>
  );
}

/** None of it can be asked for: by the interface that came with the boxes, and by a property that one engine has. */
function marksByEngine(): 'margin' | 'foot' | 'edge' {
  if ('CSSMarginRule' in globalThis) return 'margin';
  return CSS.supports('-moz-appearance', 'none') ? 'foot' : 'edge';
}
