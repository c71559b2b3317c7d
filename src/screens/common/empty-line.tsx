import type { ComponentChildren } from 'preact';
import './empty-line.css';

/** What goes on a screen that has nothing on it yet, in one sentence. */
export function EmptyLine({ children }: { children: ComponentChildren }) {
  return <p class="empty-line">{children}</p>;
}
