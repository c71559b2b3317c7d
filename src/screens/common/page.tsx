import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { unbroken } from './unbroken.tsx';
import './page.css';

export type PageProps = {
  readonly title: string;
  readonly subtitle?: ComponentChildren;
  readonly back?: { readonly href: string; readonly to: string };
  readonly aside?: ComponentChildren;
  readonly foot?: ComponentChildren;
  readonly filled?: boolean;
  readonly children: ComponentChildren;
};

// Chosen, not published: more takes a second line beside a button on a usual phone, or a third.
const LONG_TITLE = 20;
const VERY_LONG_TITLE = 40;

/** A screen: its heading with the way back, what it shows, and the main actions at the bottom where the thumb is. */
export function Page({ title, subtitle, back, aside, foot, filled = false, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Slipfit`;
    if (title.trim() !== '') arriveAt(heading.current);
  }, [title]);
  return (
    <div class="page" data-filled={filled}>
      <header class="page-head" data-long={length(title)}>
        {back && (
          <a class="page-back" href={back.href} aria-label={`Back to ${back.to}`}>
            <svg viewBox="0 0 24 24" width="28" height="28" aria-hidden="true">
              <path d="M21 12H4M11 5l-7 7 7 7" fill="none" stroke="currentColor" stroke-width="2.6" />
            </svg>
          </a>
        )}
        <div class="page-heading">
          <h1 ref={heading} class="page-name" tabIndex={-1}>
            {unbroken(title)}
          </h1>
          {subtitle !== undefined && <p class="page-subtitle">{unbroken(subtitle)}</p>}
        </div>
        {aside}
      </header>
      <main class="page-main">{children}</main>
      {foot !== undefined && <footer class="page-foot">{foot}</footer>}
    </div>
  );
}

function length(title: string): 'usual' | 'long' | 'very-long' {
  if (title.length > VERY_LONG_TITLE) return 'very-long';
  return title.length > LONG_TITLE ? 'long' : 'usual';
}

let isFirst = true;

/**
 * A screen reader says the new screen's name, and Tab goes on from there: what had the focus went with the old screen. The
 * first one it reads by itself, and a field that took the focus keeps it.
 */
function arriveAt(heading: HTMLHeadingElement | null): void {
  if (!isFirst && document.activeElement === document.body) heading?.focus({ preventScroll: true });
  isFirst = false;
}
