import type { ComponentChildren } from 'preact';
import './next-pass.css';

type NextPassProps = {
  /** How the dial is read: where it counts from, and what. */
  readonly note?: string | undefined;
  readonly children: ComponentChildren;
};

/** What to set next: the dial and the spindle, side by side. */
export function NextPass({ note, children }: NextPassProps) {
  return (
    <div class="next-pass">
      {children}
      {note !== undefined && <p class="next-pass-note">{note}</p>}
    </div>
  );
}

type SettingProps = {
  readonly label: string;
  readonly figure?: string;
  readonly unit?: string;
  /** Read from the lathe too: the number the dial then stands at, or what is missing. */
  readonly more?: string;
  /** Read in the hand: why it is this speed. */
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
      {caption !== undefined && caption !== '' && <span class="next-pass-caption">{caption}</span>}
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
