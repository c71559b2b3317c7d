import { Caution } from './caution.tsx';

/** Wherever something is to be turned. */
export function LatheCaution() {
  return (
    <Caution heading="At the lathe:">
      no gloves, no loose sleeves; spindle stopped before measuring; guards on, eyes protected, chuck key out.
      A thin ring is held on a mandrel.
    </Caution>
  );
}
