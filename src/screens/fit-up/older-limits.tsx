import { sayWanted } from '../../engine/say-check.ts';
import type { ShownUnit } from '../../engine/show.ts';
import { Button } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import type { KnownCheck } from './check-data.ts';

type OlderLimitsProps = {
  readonly known: KnownCheck;
  readonly unit: ShownUnit;
  readonly onTakeOver: () => unknown;
};

/** Said where the worksheet gives other limits by now, with the way to take them over. */
export function OlderLimits({ known: { check, older, newLimits }, unit, onTakeOver }: OlderLimitsProps) {
  if (!older) return null;
  return (
    <>
      <Caution heading="Worked out from older readings.">
        {newLimits
          ? `The worksheet says now: ${sayWanted({ by: check.by, limits: newLimits, unit })}.`
          : 'The worksheet doesn’t ask for this check any more.'}
      </Caution>
      {newLimits && (
        <div class="check-keys">
          <Button onPress={onTakeOver}>Use the new limits</Button>
        </div>
      )}
    </>
  );
}
