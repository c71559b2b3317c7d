import { Page, type PageProps } from './page.tsx';
import './pad-screen.css';

/** A page that asks for one size or number: the pad lies at the bottom under the thumb, what it is about above it. */
export function PadScreen(page: PageProps) {
  return (
    <div class="pad-screen">
      <Page {...page} />
    </div>
  );
}
