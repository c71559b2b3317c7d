import type { ComponentChildren } from 'preact';
import './next-pass.css';

type NextPassProps = { readonly children: ComponentChildren };

/** What to set next: the dial and the spindle, side by side. */
export function NextPass({ children }: NextPassProps) {
  return <div class="next-pass">{children}</div>;
}

type SettingProps = {
  readonly label: string;
  readonly figure?: string;
  readonly unit?: string;
  /** Read from the lathe too: the number the dial then stands at, or what is missing. */
  readonly more?: string;
  /** Read in the hand: what the dial counts, the speed worked out. */
  readonly caption?: string;
  /** Where what is missing is given, or changed. */
  readonly href?: string;
};

export function Setting({ label, figure, unit, more, caption, href }: SettingProps) {
  const inside = (
    <>
      <span class="next-pass-label">{label} </span>
      {figure !== undefined && (
        <span class="next-pass-figure">
          {figure}
          {unit !== undefined && <span class="next-pass-unit"> {unit}</span>}{' '}
        </span>
      )}
      {more !== undefined && <span class="next-pass-more">{more} </span>}
      {caption !== undefined && <span class="next-pass-caption">{caption}</span>}
    </>
  );
  return href === undefined ? (
    <p class="next-pass-setting">{inside}</p>
  ) : (
    <a class="next-pass-setting next-pass-link" href={href}>
      {inside}
    </a>
  );
}
