import { capital } from '../length/say-words.ts';
import { isGlance } from './say-verdict.ts';

/** `assumed: float, aluminium`; empty where nothing was taken for granted. The one place for these words. */
export function sayAssumed(things: readonly string[]): string {
  return things.length === 0 ? '' : `assumed: ${things.join(', ')}`;
}

/**
 * A verdict or a figure with what it hangs on, in the same line: `Good: float .0100, want .008 to .012; assumed: float.`
 *
 * Range:   what is said further stays behind it.
 */
export function withAssumed(said: string, things: readonly string[]): string {
  const assumed = sayAssumed(things);
  if (assumed === '' || said === '') return said;
  const [, first = said, further = ''] = /^(.*?\.)( [A-Z].*)$/s.exec(said) ?? [];
  const joined = `${first.replace(/\.$/, '')}; ${assumed}.`;
  // Beside a long verdict it is a sentence of its own, still before what is said further.
  const both = isGlance(joined) ? joined : `${first.replace(/\.?$/, '.')} ${capital(assumed)}.`;
  return `${both}${further}`;
}
