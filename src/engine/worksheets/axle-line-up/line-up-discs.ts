import type { DiscInSlot } from './axle-layout.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { isLess, minus } from '../../length/length.ts';
import { padWearReadCheck, type LineUpCheck } from './line-up-checks.ts';
import { checkOfEnd } from './line-up-ends.ts';
import type { Fitting } from './line-up-fitting.ts';
import { DISC_FACES, discReadChecks, readOfDisc, sidePlayCheck, type DiscFace } from './line-up-read.ts';
import type { LineUpLimits } from './tables/line-up-limits.ts';

type Known = Readonly<Record<string, Estimate>>;

/** A disc that may rub for all that is known: a face of it has neither been read on the machine nor can be worked out. */
export type OpenDisc = {
  readonly disc: DiscInSlot;
  /** Of slot width and thickness those that lack. */
  readonly missing: readonly string[];
  /** Where its other face was read: the one that wasn't. */
  readonly face?: DiscFace;
};

type DiscQuestion = {
  readonly known: Known;
  readonly limits: LineUpLimits;
  readonly slides: 'bracket' | 'caliper' | undefined;
  readonly fitting: Fitting;
};

/** What is judged of one disc and its bracket: what was read on the machine in place of its sum, face by face. */
export function discChecks(disc: DiscInSlot, q: DiscQuestion): readonly LineUpCheck[] {
  const { known, limits, slides, fitting } = q;
  const of = (kind: LineUpCheck['kind']) =>
    fitting.ends
      .filter(({ end }) => end.name === disc.name)
      .map((end) => ({ face: faceOf(end.end.kind), check: checkOfEnd(end, fitting.leeways, false) }))
      .filter(({ check }) => check.kind === kind);
  const wear = slides === 'bracket' ? padWearReadCheck(disc, known, limits.wearMargin) : undefined;
  const read = discReadChecks(disc, known, limits);
  const sums = of('disc-in-slot').filter(({ face }) => read.every((one) => one.face !== face));
  return [
    sidePlayCheck(disc, known, { limits, slides }),
    ...(wear ? [wear] : of('pad-wear').map(({ check }) => check)),
    ...read.map(({ check }) => check),
    ...nearer(sums.map(({ check }) => check)),
  ].filter((check) => check !== undefined);
}

/** A disc with a face that nothing is known of; undefined where both are read or worked out. */
export function openDisc(disc: DiscInSlot, known: Known): readonly OpenDisc[] {
  const missing = [disc.slotWidth, disc.discThickness].filter((name) => !known[name]);
  const unread = DISC_FACES.filter((face) => !known[readOfDisc(disc)[face]]);
  const [face] = unread;
  if (missing.length === 0 || !face) return [];
  return [{ disc, missing, ...(unread.length === 1 && { face }) }];
}

function faceOf(kind: string): DiscFace {
  return kind === 'disc-inside' ? 'inside' : 'outside';
}

/** Of the disc's two faces the one with less room. */
function nearer([first, ...rest]: readonly LineUpCheck[]): readonly LineUpCheck[] {
  if (!first) return [];
  const room = ({ value, band }: LineUpCheck) => minus(value, band.halfWidth);
  return [rest.reduce((so, check) => (isLess(room(check), room(so)) ? check : so), first)];
}
