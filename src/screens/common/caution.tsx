import type { ComponentChildren } from 'preact';
import './caution.css';

/** A caution of the trade, where it matters. Never brass, never a verdict's colour alone: a heading and a frame. */
export function Caution({ heading, children }: { heading: string; children: ComponentChildren }) {
  return (
    <aside class="caution" aria-label={heading}>
      <p>
        <strong>{heading}</strong> {children}
      </p>
    </aside>
  );
}

/** For any job that touches brakes, steering, axles or wheels. */
export function SafetyCaution() {
  return (
    <Caution heading="A mistake here can kill.">
      Follow the service manual and local rules, and have safety-critical work checked by a licensed person.
    </Caution>
  );
}
