import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, NOT_PROVED, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { inWorkOrder, type LineUpAnswer, type LineUpQuestion, type Spacer } from './line-up.ts';
import type { Reach } from './line-up-spacer.ts';
import { mean } from '../../reading/estimate.ts';
import { spacerName } from './say-line-up-names.ts';

/**
 * The spacers of an axle that are trimmed or made, in the order of work; a second way makes those new that a shim would do for.
 *
 * Units:   as `spacerDeed`.
 * Range:   none while a spacer comes out with no room, or too short to be faced: what gives first changes all of them. A cut that was refused is
 *          left out, and so is a part that is cut last: it has no length before the others are measured. What stands on
 *          readings that contradict each other is unsure, and asks which of them stands; so is all of it while anything on the
 *          axle isn't good with these very lengths, or isn't known: what cures that changes them.
 */
export function cutsOfLineUp(q: LineUpQuestion, answer: LineUpAnswer): readonly CutWay[] {
  const spacers = inWorkOrder(answer);
  if (spacers.some(({ deed: { kind } }) => kind === 'no-room' || kind === 'too-short')) return [];
  const offers = spacers.flatMap((spacer) => cutOf(q, spacer));
  const more = spacers.flatMap((spacer) => [...cutOf(q, spacer), ...newWhereAShimWouldDo(q, spacer)]);
  const isOpen = ({ limitsFrom }: CutOffer) => !limitsFrom.endsWith(LESS_THE_BAND);
  const unsure = more.some(isOpen) || !holds(answer) ? ({ unsure: true } as const) : {};
  return [
    ...wayOf({ id: 'spacers', name: 'The spacers', offers, ...unsure }),
    ...(more.length > offers.length
      ? wayOf({ id: NEW_FOR_SHIMS, name: 'New spacers, no shims', offers: more, ...unsure })
      : []),
  ];
}

/** The way that makes new what a shim would do for. */
export const NEW_FOR_SHIMS = 'new-for-shims';

/** Whether all that is judged of the axle is good once it has these lengths: a disc that rubs has its slot or float changed first. */
function holds({ checks, shared, openDiscs, openWear }: LineUpAnswer): boolean {
  return (
    openDiscs.length === 0 &&
    !openWear &&
    [...checks, ...shared].every(({ verdict }) => verdict.kind === 'good')
  );
}

function cutOf(q: LineUpQuestion, spacer: Spacer): readonly CutOffer[] {
  const { deed } = spacer;
  if (deed.kind === 'make' && deed.make.ok) return [made(q, spacer, deed.make.value)];
  if (deed.kind !== 'trim' || !deed.cut.ok) return [];
  const onHand = q.onHand[spacer.name];
  return [
    {
      ...offerFor(q, spacer, deed.cut.value),
      name: facedName(q, spacer),
      ...(onHand && { present: mean(onHand) }),
    },
  ];
}

function newWhereAShimWouldDo(q: LineUpQuestion, spacer: Spacer): readonly CutOffer[] {
  const { deed } = spacer;
  return deed.kind === 'shim' && deed.make.ok ? [made(q, spacer, deed.make.value)] : [];
}

function made(q: LineUpQuestion, spacer: Spacer, reach: Reach): CutOffer {
  return { ...offerFor(q, spacer, reach), name: madeName(q, spacer) };
}

const facedName = (q: Named, spacer: Spacer) => `${calledIn(q, spacer)}, faced to length`;
const madeName = (q: Named, spacer: Spacer) => `${calledIn(q, spacer)}, made new`;

/** The name of the cut that a spacer is made or faced by; nothing where it is kept, shimmed or cut last. */
export function cutNameOf(q: Named, spacer: Spacer): string | undefined {
  if (spacer.deed.kind === 'make') return madeName(q, spacer);
  return spacer.deed.kind === 'trim' ? facedName(q, spacer) : undefined;
}

function offerFor(q: LineUpQuestion, spacer: Spacer, { to, lower, upper, unproved }: Reach) {
  return {
    part: calledIn(q, spacer).toLowerCase(),
    operation: 'face',
    of: 'length',
    target: to,
    lower,
    upper,
    limitsFrom: `how far off float and filled room may be (${sourceOf(q)}), shared by the parts, ${
      spacer.band.doubt ? TWO_READINGS : unproved ? NOT_PROVED : LESS_THE_BAND
    }`,
  } as const;
}

const TWO_READINGS = 'with two readings that contradict each other: settle which reading stands first';

function sourceOf({ limits: { spacer, opening } }: LineUpQuestion): string {
  return spacer.source === opening.source ? spacer.source : `${spacer.source}; ${opening.source}`;
}

type Named = Pick<LineUpQuestion, 'layout' | 'side'>;

function calledIn(q: Named, { name }: Spacer): string {
  return spacerName(name, q);
}
