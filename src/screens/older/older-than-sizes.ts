import { basisWithout, isOlder } from '../../store/kept/basis.ts';
import type {
  AssemblyStep,
  Basis,
  Check,
  CheckTake,
  Cut,
  Feature,
  Id,
  ReadingRecord,
  Worksheet,
} from '../../store/base/records.ts';
import { readInPlace, readingsIn, withoutReadInPlace } from '../fit-up/check-from-offer.ts';

/** What figures are held against: the worksheets, features and readings of their job, of several jobs where they are of several. */
export type Ground = {
  readonly worksheets: readonly Worksheet[];
  readonly features: readonly Feature[];
  readonly readings: readonly ReadingRecord[];
};

/** Something of a job that shows a figure that was worked out, or was done by one. */
export type Figures =
  | { readonly of: 'cut'; readonly cut: Pick<Cut, 'basis' | 'state' | 'worksheetId' | 'workedOutIn'> }
  | { readonly of: 'limits'; readonly check: Pick<Check, 'basis' | 'worksheetId' | 'sizeName'> }
  | {
      readonly of: 'go';
      readonly check: Pick<Check, 'worksheetId' | 'sizeName'>;
      readonly take: Pick<CheckTake, 'basis'> & { readonly readings: readonly ReadingRecord[] };
    }
  | { readonly of: 'words'; readonly step: Pick<AssemblyStep, 'workedOut'> }
  | { readonly of: 'done'; readonly step: Pick<AssemblyStep, 'workedOut' | 'worksheetId' | 'done'> };

/** The one mark, in the same words wherever a figure is shown. */
export const OLDER = 'Older than its sizes';

/**
 * Whether a figure is older than the sizes it was worked out from: a reading behind it was struck out, a newer one counts,
 * or a size, a choice or a part of its worksheet is another one by now. The one question that every place asks which shows
 * such a figure. It follows from what the record keeps (`basis`) and from what is known now, so that no merge can lose it.
 *
 * Range:  a record that keeps no basis was worked out from nothing here, and is never older. What is read on the machine
 *         proves what was cut, checked and put together, and makes none of it older; a cut that is still to be made it does.
 *         One whose worksheet was removed is older once a reading behind it is gone; one made again from a job that isn't
 *         on this phone can't be told.
 */
export function isOlderThanSizes(figures: Figures, ground: Ground): boolean {
  const { basis, worksheetId, sizeName, machine, isElsewhere = false } = standing(figures);
  if (!basis) return false;
  const worksheet = ground.worksheets.find(({ id }) => id === worksheetId);
  if (!worksheet) return !isElsewhere && isOlder(basis, undefined, ground.readings);
  if (machine === 'counts') return isOlder(basis, worksheet, readingsIn(worksheet, ground.readings));
  const ofChecks = new Set(ground.features.flatMap(({ id, checkId }) => (checkId === undefined ? [] : id)));
  const proofs = ground.readings.filter(({ featureId }) => ofChecks.has(featureId)).map(({ id }) => id);
  const named = sizeName === undefined ? {} : { sizeName };
  const sizes = new Set([
    ...readInPlace(worksheet),
    ...(sizeName === undefined ? [] : [sizeName]),
    ...(figures.of === 'go' || figures.of === 'done' ? WANTED : []),
  ]);
  const all = withoutReadInPlace(named, worksheet, ground.features);
  const now = {
    ...all,
    sizes: Object.fromEntries(Object.entries(all.sizes).filter(([name]) => !sizes.has(name))),
  };
  return isOlder(
    basisWithout(basis, { sizes, features: ofChecks, readings: new Set(proofs) }),
    now,
    readingsIn(now, ground.readings),
  );
}

// What is only wanted changes nothing of what was read or put together: it is judged anew.
const WANTED = ['lower', 'upper', 'aim'];

type Standing = {
  readonly basis: Basis | undefined;
  readonly worksheetId: Id | undefined;
  readonly sizeName?: string | undefined;
  /** Whether what was read on the machine counts as a size, or only proves. */
  readonly machine: 'counts' | 'proves';
  readonly isElsewhere?: boolean;
};

function standing(figures: Figures): Standing {
  switch (figures.of) {
    case 'cut': {
      const { basis, state, worksheetId, workedOutIn } = figures.cut;
      return {
        basis,
        worksheetId: worksheetId ?? workedOutIn?.worksheetId,
        machine: state === 'to-size' ? 'proves' : 'counts',
        isElsewhere: workedOutIn !== undefined,
      };
    }
    case 'limits': {
      const { basis, worksheetId, sizeName } = figures.check;
      return { basis, worksheetId, sizeName, machine: 'proves' };
    }
    case 'go': {
      const { worksheetId, sizeName } = figures.check;
      return { basis: basisOfGo(figures.take), worksheetId, sizeName, machine: 'proves' };
    }
    case 'words': {
      const { workedOut } = figures.step;
      return { basis: workedOut?.basis, worksheetId: workedOut?.worksheetId, machine: 'proves' };
    }
    case 'done': {
      const { done, workedOut, worksheetId } = figures.step;
      return {
        basis: done?.basis,
        worksheetId: workedOut?.worksheetId ?? worksheetId,
        machine: 'proves',
      };
    }
    default:
      return figures satisfies never;
  }
}

/** A go was read on what was there at its last reading that counts. */
function basisOfGo({ basis, readings }: Extract<Figures, { of: 'go' }>['take']): Basis | undefined {
  return readings.findLast(({ struckOut }) => struckOut === undefined)?.basis ?? basis;
}
