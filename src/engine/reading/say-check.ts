import type { CheckBy, CheckFound, CheckState, GoResult } from './check.ts';
import { saySettler, sayVerdict, sayWant } from './say-verdict.ts';
import { withUnit, figure, showBand, type ShownUnit } from '../length/show.ts';
import type { Settler } from './settle.ts';
import { showAgainst } from '../length/show-limits.ts';
import type { Limits } from './verdict.ts';
import { capital } from '../length/say-words.ts';

export type SaidCheck = {
  readonly name: string;
  readonly by: CheckBy;
  readonly limits: Limits;
  readonly unit: ShownUnit;
};

const KIND_WORDS: Readonly<Record<Exclude<CheckBy, 'by-eye'>, string>> = {
  bore: 'bore',
  pin: 'pin',
  length: 'length',
  depth: 'depth',
  gap: 'gap',
  runout: 'runout',
};

// The words that `sayVerdict` knows both ways of, as they stand in a check's name. "Stands proud" is a projection.
const QUANTITIES: readonly (readonly [RegExp, string])[] = [
  [/end play/i, 'end play'],
  [/side play/i, 'side play'],
  [/\bfloat\b/i, 'float'],
  [/\brock\b/i, 'rock'],
  [/runout|rim, /i, 'runout'],
  [/\bproud\b/i, 'projection'],
  [/\bslop\b/i, 'slop'],
  [/clearance|clear of|free above/i, 'clearance'],
  [/longer than/i, 'excess length'],
  [/difference/i, 'difference'],
];

/** A check in one sentence: `Good: float .010, want .008 to .012.` */
export function sayCheckState(state: CheckState, said: SaidCheck): string {
  if (state.wants === 'retake') return `To be taken again; ${sayWanted(said)}.`;
  return state.last.kind === 'nothing-yet' ? `Not done yet; ${sayWanted(said)}.` : sayGo(state.last, said);
}

/** One go in one sentence. */
export function sayGo(go: GoResult, said: SaidCheck): string {
  switch (go.kind) {
    case 'nothing-yet':
      return 'Nothing read.';
    case 'seen':
      return go.holds ? 'Good, seen by eye.' : 'No good, seen by eye.';
    case 'unjudged':
      return `${capital(quantityOf(said))} ${withUnit(figure(go.value, said.unit), said.unit)} ${showBand(go.band.halfWidth, said.unit)}; give a lower or an upper limit, and it is judged.`;
    case 'judged':
      return sayVerdict(go.verdict, {
        quantity: quantityOf(said),
        unit: said.unit,
        limits: said.limits,
        value: go.value,
        halfWidth: go.band.halfWidth,
      });
    default:
      return go satisfies never;
  }
}

/** What is wanted of a check: `want .008 to .012`. */
export function sayWanted({ by, limits: { lower, upper }, unit }: Omit<SaidCheck, 'name'>): string {
  if (by === 'by-eye') return 'by eye';
  if (!lower && !upper) return 'no limits yet';
  return sayWant(showAgainst([], { ...(lower && { lower }), ...(upper && { upper }) }, unit), unit);
}

/** Which tool, with how many readings, would call it; the check is the direct reading, there is no more direct one. */
export function sayCheckSettler(settler: Settler | undefined, unit: ShownUnit): string {
  return settler
    ? saySettler(settler, unit)
    : 'No tool in Shop can settle it so near the limit. Move the size away from the limit.';
}

/** What is read, in the word that its verdict knows: by the check's name, else by the kind of reading. */
export function quantityOf({ name, by }: Pick<SaidCheck, 'name' | 'by'>): string {
  const known = QUANTITIES.find(([pattern]) => pattern.test(name))?.[1];
  return known ?? (by === 'by-eye' ? '' : KIND_WORDS[by]);
}

/**
 * `1 of 5 checks failed, 2 still to do.`, or that all are good. A check that failed was done. Worksheets that offer a check of
 * which none was made are named in the same sentence: what is good so far is not all.
 */
export function sayHowMany(founds: readonly CheckFound[], unmade = 0): string {
  if (unmade === 0) return sayMade(founds);
  const lack = unmade === 1 ? '1 worksheet has' : `${unmade} worksheets have`;
  return founds.length === 0
    ? `${lack} no check yet.`
    : `${sayMade(founds).replace(/\.$/, '')}; ${lack} none yet.`;
}

function sayMade(founds: readonly CheckFound[]): string {
  const count = founds.length;
  const failed = founds.filter((found) => found === 'no-good').length;
  const open = founds.filter((found) => found !== 'good').length - failed;
  const checks = count === 1 ? '1 check' : `${count} checks`;
  if (failed === count) return count === 1 ? 'The check failed.' : `All ${checks} failed.`;
  if (failed > 0) return `${failed} of ${checks} failed${open === 0 ? '' : `, ${open} still to do`}.`;
  if (open === 0) return count === 1 ? 'The check is good.' : `All ${checks} are good.`;
  return open === count ? `${checks} to do.` : `${open} of ${checks} still to do.`;
}
