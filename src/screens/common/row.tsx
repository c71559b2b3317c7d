import type { ComponentChildren } from 'preact';
import { useOnePress } from './one-press.ts';
import { unbroken } from './unbroken.tsx';
import './row.css';

type RowProps = {
  readonly title: ComponentChildren;
  readonly detail?: ComponentChildren;
  readonly figure?: ComponentChildren;
  readonly mark?: ComponentChildren;
  /** Where it leads, or what it does; a row with neither is only read. */
  readonly href?: string;
  readonly onPress?: () => unknown;
  readonly state?: string;
};

/** One line of a list: what it is, more about it, its figure, and where it leads. */
export function Row({ title, detail, figure, mark, href, onPress, state }: RowProps) {
  const onePress = useOnePress();
  const inside = (
    <>
      <span class="row-words">
        <span class="row-title">{unbroken(title)}</span>
        {detail !== undefined && <span class="row-detail">{unbroken(detail)}</span>}
      </span>
      {figure !== undefined && <span class="row-figure">{figure}</span>}
      {mark}
      {(href !== undefined || onPress) && <span class="row-arrow" aria-hidden="true" />}
    </>
  );
  if (href !== undefined) {
    return (
      <a class="row" data-state={state} href={href}>
        {inside}
      </a>
    );
  }
  if (onPress) {
    return (
      <button
        type="button"
        class="row"
        data-state={state}
        onClick={() => onePress.take(onPress, { commits: false })}
      >
        {inside}
      </button>
    );
  }
  return (
    <div class="row" data-state={state}>
      {inside}
    </div>
  );
}
