import type { EntryRefusal } from './entry.ts';
import type { Length } from './length.ts';

/** What can't be worked out, as a code with its figures; `say.ts` turns it into a sentence. */
export type Refusal =
  | EntryRefusal
  | {
      readonly code: 'no-step-in-limits';
      readonly step: Length;
      readonly lower: Length;
      readonly upper: Length;
    }
  | {
      readonly code: 'metal-gone';
      readonly present: Length;
      readonly limit: Length;
      readonly past: Length;
    }
  | {
      readonly code: 'below-least-length';
      readonly part: string;
      readonly least: Length;
      readonly missing: Length;
    }
  | {
      readonly code: 'no-proof';
      readonly halfWidth: Length;
      readonly lower: Length;
      readonly upper: Length;
    };

export type Result<T, R = Refusal> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: R };

export function worked<T>(value: T): { ok: true; value: T } {
  return { ok: true, value };
}

export function refuse<R extends { code: string }>(refusal: R): { ok: false; refusal: R } {
  return { ok: false, refusal };
}
