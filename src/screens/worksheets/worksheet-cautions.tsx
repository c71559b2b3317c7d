import { HOLE_WEAKER } from '../../engine/cut/say-strength.ts';
import { Caution } from '../common/caution.tsx';

/** What a worksheet's answer does not give, said on its screen and printed with it. */
export function InsertCaution() {
  return (
    <Caution heading="What an insert gives back:">
      a good thread, not the metal that was lost. The part is weaker by what the tap takes, and a crack stays
      a crack. {HOLE_WEAKER}
    </Caution>
  );
}

export function BushingCaution() {
  return (
    <Caution heading="What a bushing gives back:">
      the size of the hole, not the strength of the metal that was cut away. A crack stays a crack: look for
      one before you ream. {HOLE_WEAKER}
    </Caution>
  );
}

export function EngagementCaution() {
  return (
    <Caution heading="What this does and doesn’t say:">
      it holds for full, clean threads and one steady pull. A stripped, corroded or shaken thread holds less.
      The service manual’s bolt, length and torque rule.
    </Caution>
  );
}

export function SteeringCaution() {
  return (
    <Caution heading="Steering kills.">
      Keep to the trail in the service manual, ride nothing that shakes its head, and have a changed front end
      checked by a licensed person.
    </Caution>
  );
}
