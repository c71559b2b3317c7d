import { RETAINING_COMPOUND } from '../../job/retaining-compound.ts';
import type { GetOffer } from '../../job/get-list.ts';
import type { ShownUnit } from '../../length/show.ts';
import { getsOfBushing } from '../bushing/gets-of-bushing.ts';
import type { Lock, MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';

const LOCKED_WITH: Readonly<Record<Lock, GetOffer>> = {
  dowel: { kind: 'part', what: 'dowel to lock the bushing', count: 1 },
  screw: { kind: 'part', what: 'screw to lock the bushing', count: 1 },
  bond: RETAINING_COMPOUND,
};

/** The bar for its bushing, and what that is locked with where its bore stands off its middle. */
export function getsOfMisplacedHole(
  { bushed, lock }: MisplacedHoleQuestion,
  { press, off }: MisplacedHoleAnswer,
  unit: ShownUnit,
): readonly GetOffer[] {
  return [...getsOfBushing(bushed, press, unit), ...(off ? [LOCKED_WITH[lock]] : [])];
}
