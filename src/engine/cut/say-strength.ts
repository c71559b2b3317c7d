import type { CutKind } from '../length/metal-on.ts';
import type { Operation } from './cut.ts';

type CutSaid = {
  readonly name: string;
  readonly part: string;
  readonly operation: Operation;
  readonly of?: CutKind;
};

/** What is always said with it: nobody here judges strength. */
const JUDGED = 'have its strength judged before you cut.';

// What a fitter calls parts that something hangs on, and the spacers between them. Common practice, no source: a name
// that is none of the first is a spacer, and a spacer's length carries nothing away. `\w*` for kingpin and swingarm.
const CARRIES =
  'bracket|leg|fork|\\w*arm|calliper|caliper|lug|boss(?:es)?|ear|hanger|\\w*plate|cheek|flange|hub|wheel|frame|clamp|yoke|stem|axle|spindle|shaft|' +
  'stay|strut|brace|gusset|link|wishbone|knuckle|trunnion|upright|carrier|mount|mounting|tab|eye|clevis|beam|member|rail|tube|drop-?out|' +
  '\\w*frame|\\w*bar|\\w*case|housing|casting|block|cradle|drum|cap|rim|nut|screw|saddle|outrigger|tongue|joint|\\w*peg|\\w*stand|pulley|' +
  'head ?stock|drawbar|coupling|hitch|lever|pedal|crank|rod|disc|disk|rotor|sprocket|\\w*pin|pivot|bolt|stud';
const BETWEEN = 'spacer|washer|shim|sleeve|bushing|bush(?:es)?|ring|collar|gasket|seal|shield';
const NAMES = new RegExp(`\\b(?:(${CARRIES})|${BETWEEN})s?\\b`, 'gi');
// `Washer under the arm` is a washer, `Hub to bracket` is what lies between the two.
const WHERE = /[,;(]|\b(?:under|on|of|for|at|in|beside|between|behind|against|from|with)\b/i;
const FROM_TO = /\bto\b/i;

/**
 * Whether a part by this name carries load, so that no metal comes off it without its strength being said. The last word that
 * says what it is decides: a bushing carrier is a carrier, a leg spacer a spacer.
 */
export function carriesLoad(part: string): boolean {
  if (FROM_TO.test(part)) return false;
  const [what = ''] = part.split(WHERE);
  const last = [...what.matchAll(NAMES)].at(-1);
  return last?.[1] !== undefined;
}

/** Said wherever a part may be made thinner, shorter or smaller; empty for a spacer, which carries nothing away. */
export function sayStrength(part: string): string {
  return carriesLoad(part) ? sayWeaker(part) : '';
}

/** `Metal off the bracket makes it weaker: have its strength judged before you cut.` */
export function sayWeaker(part: string): string {
  return `Metal off the ${part} makes it weaker: ${JUDGED}`;
}

/** Where one of several ways may need metal off a part that isn't named. */
export const SOMETHING_WEAKER = `Where metal comes off a part for it, ${JUDGED}`;

/** Said wherever a hole is drilled, reamed, bored or tapped in a part. */
export const HOLE_WEAKER = 'A larger hole leaves less metal: have the part’s strength judged before you cut.';

/** Said where a tapped hole is to be made deeper. */
export const DEEPER_HOLE_WEAKER =
  'A deeper hole leaves less metal: have the part’s strength judged before you cut.';

const RECESS_WEAKER = 'A deeper recess leaves less metal: have the part’s strength judged before you cut.';

/** What is said of several cuts on offer, each sentence once. */
export function sayStrengthOfCuts(cuts: readonly CutSaid[]): readonly string[] {
  return [...new Set(cuts.map(sayStrengthOfCut))].filter((sentence) => sentence !== '');
}

/** What is said of a way to cure a joint, by what it takes metal off: the part round its hole, or its pin. */
export function sayStrengthOfWay(takesOff: 'hole' | 'pin' | undefined): string {
  if (takesOff === undefined) return '';
  return takesOff === 'hole' ? HOLE_WEAKER : sayWeaker('pin');
}

/** What is said of a cut, on its list, its page, at the machine, on the sheet and in files; empty where nothing carries less by it. */
export function sayStrengthOfCut({ name, part, operation, of }: CutSaid): string {
  // A part that is made new has all the metal it is drawn with.
  if (/made new/i.test(name)) return '';
  const isUnnamed = UNNAMED.test(part.trim());
  const inPart = HOLES.test(part.trim()) || isUnnamed || carriesLoad(part);
  if (/^recess$/i.test(part.trim()) || (of === 'recess-depth' && inPart)) return RECESS_WEAKER;
  // A hole weakens whatever it is in, by what name ever, but for what only lies between.
  if (HOLE_WORK.has(operation)) return inPart || !liesBetween(part) ? HOLE_WEAKER : '';
  if (isUnnamed) return sayWeaker('part');
  return HOLES.test(part.trim()) ? '' : sayStrength(part);
}

const HOLE_WORK: ReadonlySet<Operation> = new Set(['drill', 'tap', 'ream', 'bore']);
const HOLES = /^(?:hole|bore)$/i;
// What a cut of one's own stands under until its part is named.
const UNNAMED = /^(?:part)?$/i;

/** A spacer or the like, by its name; the spacers of an axle are called by what they lie between. */
function liesBetween(part: string): boolean {
  if (FROM_TO.test(part)) return true;
  const [what = ''] = part.split(WHERE);
  const last = [...what.matchAll(NAMES)].at(-1);
  return last !== undefined && last[1] === undefined;
}
