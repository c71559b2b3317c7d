import type { ComponentChildren } from 'preact';
import { tick } from './announce.ts';
import { useOnePress } from './one-press.ts';
import './button.css';

type ButtonProps = {
  readonly kind?: 'main' | 'plain' | 'quiet';
  readonly chosen?: boolean;
  readonly label?: string;
  readonly disabled?: boolean;
  /** What writes gives its promise back: until it is kept, another press does nothing. */
  readonly onPress: () => unknown;
  readonly children: ComponentChildren;
};

/** Anything pressed that does something. `chosen` makes it one of a set, spoken as pressed or not. */
export function Button({ kind = 'plain', chosen, label, disabled = false, onPress, children }: ButtonProps) {
  const onePress = useOnePress();
  const act = () => {
    tick();
    return onPress();
  };
  return (
    <button
      type="button"
      class={`button button-${kind}`}
      aria-pressed={chosen}
      aria-label={label}
      disabled={disabled}
      onClick={() => onePress.take(act, { commits: kind === 'main' })}
    >
      {children}
    </button>
  );
}

type LinkButtonProps = {
  readonly kind?: 'main' | 'plain' | 'quiet';
  readonly href: string;
  readonly label?: string;
  readonly children: ComponentChildren;
};

/** Anything pressed that leads to another place. */
export function LinkButton({ kind = 'plain', href, label, children }: LinkButtonProps) {
  return (
    <a class={`button button-${kind}`} href={href} aria-label={label}>
      {children}
    </a>
  );
}
