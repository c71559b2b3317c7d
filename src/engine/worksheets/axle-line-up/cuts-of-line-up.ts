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
 *          readings that contradict each other is unsure, and asks which of them stands.
 */
export function cutsOfLineUp(q: LineUpQuestion, answer: LineUpAnswer): readonly CutWay[] {
  const spacers = inWorkOrder(answer);
  if (spacers.some(({ deed: { kind } }) => kind === 'no-room' || kind === 'too-short')) return [];
  const offers = spacers.flatMap((spacer) => cutOf(q, spacer));
  const more = spacers.flatMap((spacer) => [...cutOf(q, spacer), ...newWhereAShimWouldDo(q, spacer)]);
  const isOpen = ({ limitsFrom }: CutOffer) => !limitsFrom.endsWith(LESS_THE_BAND);
  const unsure = more.some(isOpen) ? ({ unsure: true } as const) : {};
  return [
    ...wayOf({ id: 'spacers', name: 'The spacers', offers, ...unsure }),
    ...(more.length > offers.length
      ? wayOf({ id: 'new-for-shims', name: 'New spacers, no shims', offers: more, ...unsure })
      : []),
  ];
}

function cutOf(q: LineUpQuestion, spacer: Spacer): readonly CutOffer[] {
  const { deed } = spacer;
  if (deed.kind === 'make' && deed.make.ok) return [made(q, spacer, deed.make.value)];
  if (deed.kind !== 'trim' || !deed.cut.ok) return [];
  const onHand = q.onHand[spacer.name];
  return [
    {
      ...offerFor(q, spacer, deed.cut.value),
      name: `${calledIn(q, spacer)}, faced to length`,
      ...(onHand && { present: mean(onHand) }),
    },
  ];
}

function newWhereAShimWouldDo(q: LineUpQuestion, spacer: Spacer): readonly CutOffer[] {
  const { deed } = spacer;
  return deed.kind === 'shim' && deed.make.ok ? [made(q, spacer, deed.make.value)] : [];
}

function made(q: LineUpQuestion, spacer: Spacer, reach: Reach): CutOffer {
  return { ...offerFor(q, spacer, reach), name: `${calledIn(q, spacer)}, made new` };
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

function calledIn(q: LineUpQuestion, { name }: Spacer): string {
  return spacerName(name, q);
}
