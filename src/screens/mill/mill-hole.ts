import { plus, type Length } from '../../engine/length/length.ts';
import type { OnWork } from '../../engine/cut/cut.ts';
import { usualMills } from '../common/mill-slides.ts';
import { getSetting } from '../../store/kept/settings.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import type { Cut, KeptMill } from '../../store/base/records.ts';
import { useLive } from '../common/store-context.ts';
import { countsStill } from '../cuts/cut-words.ts';

/** A plate's holes as they stand at the mill, in the order of work, and what the mill has. */
export type AtMill = { readonly holes: readonly Cut[]; readonly mill: KeptMill };

export function useAtMill(cut: Cut): AtMill | undefined {
  return useLive(`mill/${cut.id}`, ['cuts', 'settings'], async (store) => {
    const all = await cutsOf(store, cut.jobId);
    const unit = (await getSetting(store, 'shownUnit')) ?? 'in';
    return {
      holes: all
        .filter((one) => one.stands && one.worksheetId === cut.worksheetId && countsStill(one))
        .toSorted((a, b) => a.createdAt - b.createdAt),
      mill: (await getSetting(store, 'mill')) ?? usualMills[unit],
    };
  });
}

/** Drilled, or measured already. */
export function isDrilled({ made, state }: Pick<Cut, 'made' | 'state'>): boolean {
  return made !== undefined || state === 'to-size' || state === 'over';
}

/** What the slides are to read: its place, and what a wrong zero has them read too much. */
export function setFor({ stands, zeroShift }: Pick<Cut, 'stands' | 'zeroShift'>): OnWork | undefined {
  if (!stands) return undefined;
  const shifted = (axis: 'x' | 'y'): Length =>
    zeroShift ? plus(stands[axis].exact, zeroShift[axis].exact) : stands[axis].exact;
  return { x: shifted('x'), y: shifted('y') };
}

/** The next that is left, from this one on and round again. */
export function nextHole(holes: readonly Cut[], id: string): Cut | undefined {
  const here = holes.findIndex((one) => one.id === id);
  const inOrder = [...holes.slice(here + 1), ...holes.slice(0, Math.max(0, here))];
  return inOrder.find((one) => !isDrilled(one));
}

/** The one that was drilled last: the slides stand there. */
export function lastDrilled(holes: readonly Cut[], id: string): Cut | undefined {
  return holes
    .filter((one) => one.made !== undefined && one.id !== id)
    .toSorted((a, b) => (b.made?.at ?? 0) - (a.made?.at ?? 0))[0];
}
