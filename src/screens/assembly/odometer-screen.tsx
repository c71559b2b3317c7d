import { useState } from 'preact/hooks';
import { odometerIn, type DistanceUnit } from '../../engine/job/recheck-due.ts';
import { setOdometer } from '../../store/kept/rechecks.ts';
import type { Job } from '../../store/base/records.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import { dayWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';

const MOST = 9_999_999;

/** What the odometer reads now: from it a re-check after so many miles knows when it is due. */
export function OdometerScreen({ job }: { job: Job }) {
  const store = useStore();
  const [unit, setUnit] = useState<DistanceUnit>(job.odometer?.unit ?? 'mi');
  const { trouble, told } = useTold();
  const here = { at: 'assembly', jobId: job.id } as const;
  const before = job.odometer && odometerIn(job.odometer, unit);
  const take = (text: string) =>
    told(setOdometer(store, job.id, { reading: Number(text), unit }), () => go(here));
  return (
    <PadScreen
      title="What does the odometer read?"
      subtitle={
        job.odometer && before !== undefined
          ? `${before} ${unit} on ${dayWords(job.odometer.at)}`
          : 'whole miles or kilometres'
      }
      back={{ href: hrefOf(here), to: 'the assembly' }}
    >
      <Trouble>{trouble}</Trouble>
      <NumberEntry
        label="Odometer"
        draftKey={`assembly/${job.id}/odometer`}
        bounds={{ least: 0, most: MOST, unit, whole: true }}
        onNumber={take}
      >
        <DistanceUnits unit={unit} onUnit={setUnit} />
      </NumberEntry>
    </PadScreen>
  );
}

/** Miles or kilometres, beside the pad. */
export function DistanceUnits({
  unit,
  onUnit,
}: {
  unit: DistanceUnit;
  onUnit: (unit: DistanceUnit) => void;
}) {
  return (
    <div class="assembly-units" role="group" aria-label="Counted in">
      <Button chosen={unit === 'mi'} label="mi, miles" onPress={() => onUnit('mi')}>
        mi
      </Button>
      <Button chosen={unit === 'km'} label="km, kilometres" onPress={() => onUnit('km')}>
        km
      </Button>
    </div>
  );
}
