import type { ComponentChildren } from 'preact';
import { Page } from './page.tsx';
import './trouble-page.css';

type TroublePageProps = {
  /** What is the matter, and what became of what was logged. */
  readonly sentence: string;
  /** The ways on. */
  readonly children: ComponentChildren;
};

/** In place of a screen that can't be shown. */
export function TroublePage({ sentence, children }: TroublePageProps) {
  return (
    <Page title="Slipfit">
      <div class="trouble-page">
        <p role="alert">{sentence}</p>
        {children}
      </div>
    </Page>
  );
}
