import type { Entry } from '../../engine/length/entry.ts';
import { isLess, isMore, sameLength } from '../../engine/length/length.ts';
import type { FeatureKind, MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { nextThatStops } from '../../engine/reading/reading.ts';
import { asTyped, figure, type ShownUnit } from '../../engine/length/show.ts';
import { Button } from '../common/button.tsx';

type StepKeyProps = {
  readonly kind: FeatureKind;
  readonly tool: MeasuringTool;
  /** What is typed, where it can be read. */
  readonly typed: Entry | undefined;
  /** What goes, while the one that doesn't is typed. */
  readonly goes: Entry | undefined;
  readonly unit: ShownUnit;
  /** Take what is typed as the one that goes, and ask for the one that doesn't. */
  readonly onGoes: (goes: Entry) => void;
  /** Back to typing the one that goes. */
  readonly onBack: () => void;
};

/**
 * Beside the pad of leaves and plugs: which one goes is typed, and the next of the set stands as the one that doesn't.
 * A press gives another one. The key has its place from the start, so that nothing moves under the thumb.
 */
export function StepKey({ kind, tool, typed, goes, unit, onGoes, onBack }: StepKeyProps) {
  if (goes)
    return (
      <Button chosen onPress={onBack}>
        {asTyped(goes)} goes
      </Button>
    );
  const next = typed && nextThatStops({ exact: typed.exact, tool }, kind);
  return (
    <Button
      disabled={!typed}
      label={next ? `${figure(next, unit)} doesn’t go: another` : 'What doesn’t go'}
      onPress={() => typed && onGoes(typed)}
    >
      {next ? `${figure(next, unit)} doesn’t` : 'the next doesn’t'}
    </Button>
  );
}

/** Why the one that doesn't go can't stand beside the one that goes; a ring that goes over a pin is the larger. */
export function stepFault(kind: FeatureKind, goes: Entry, stops: Entry): string | undefined {
  if (sameLength(goes.exact, stops.exact))
    return `${asTyped(goes)} goes. Type the next one tried, which doesn’t.`;
  if (kind === 'pin' ? isMore(stops.exact, goes.exact) : isLess(stops.exact, goes.exact))
    return `${asTyped(goes)} goes, so a ${kind === 'pin' ? 'larger' : 'smaller'} one goes too. Type the one that doesn’t.`;
  return undefined;
}
