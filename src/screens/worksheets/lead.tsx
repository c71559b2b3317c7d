import type { ComponentChildren } from 'preact';
import './lead.css';

type LeadProps = {
  readonly label: string;
  readonly figure: string;
  readonly unit?: string;
  readonly children?: ComponentChildren;
};

/** The one number that matters, large enough to be read from the lathe, with what to do about it. */
export function Lead({ label, figure, unit, children }: LeadProps) {
  return (
    <section class="lead">
      <h2 class="lead-label">{label}</h2>
      <p class="lead-figure" data-long={figure.length > 6}>
        {figure}
        {unit !== undefined && <span class="lead-unit"> {unit}</span>}
      </p>
      {children}
    </section>
  );
}

/** The next line under it: the sizes from and to, in the size a step is read at. */
export function LeadNext({ children }: { children: ComponentChildren }) {
  return <p class="lead-next">{children}</p>;
}

type WhyProps = {
  readonly lines: readonly { readonly what: string; readonly how: string; readonly source?: string }[];
};

/** How a figure came about: the formula, the numbers put in, and where they come from; one press away. */
export function Why({ lines }: WhyProps) {
  return (
    <details class="why" id="why">
      <summary>Why?</summary>
      <dl>
        {lines.map(({ what, how, source }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{how}</dd>
            {source !== undefined && <dd class="why-source">Source: {source}</dd>}
          </div>
        ))}
      </dl>
    </details>
  );
}
