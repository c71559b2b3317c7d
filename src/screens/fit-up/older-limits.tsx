import { sayWanted } from '../../engine/reading/say-check.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { Button } from '../common/button.tsx';
import { OlderMark } from '../older/older-mark.tsx';
import type { KnownCheck } from './check-data.ts';

type OlderLimitsProps = {
  readonly known: KnownCheck;
  readonly unit: ShownUnit;
  readonly onTakeOver: () => unknown;
  readonly onRetake: () => unknown;
};

/** Said where the worksheet gives other limits by now, or the go was read before a size changed, with the one press for it. */
export function OlderLimits({ known, unit, onTakeOver, onRetake }: OlderLimitsProps) {
  const { check, older, newLimits, instead, readBefore } = known;
  if (!older && !readBefore) return null;
  return (
    <section class="one-check-older">
      <OlderMark />
      <p>
        {older &&
          newLimits &&
          `The worksheet says now: ${sayWanted({ by: check.by, limits: newLimits, unit })}.`}
        {older && !newLimits && instead && `The side counts. Take it anew: ${uncapital(instead.name)}.`}
        {older && !newLimits && !instead && 'The worksheet doesn’t ask for this check any more.'}
        {!older && 'It was read before a size behind it changed.'}
      </p>
      <div class="check-keys">
        {newLimits && <Button onPress={onTakeOver}>Use the new limits</Button>}
        {readBefore && <Button onPress={onRetake}>Check it again</Button>}
      </div>
    </section>
  );
}
