import type { ComponentChildren } from 'preact';
import './caution.css';

type CautionProps = {
  readonly heading: string;
  /** It stands in a section of its own among others that may caution of the same: no place to be gone to by its name. */
  readonly inText?: true;
  readonly children: ComponentChildren;
};

/** A caution of the trade, where it matters. Never brass, never a verdict's colour alone: a heading and a frame. */
export function Caution({ heading, inText, children }: CautionProps) {
  return (
    <aside class="caution" aria-label={inText ? undefined : heading}>
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
