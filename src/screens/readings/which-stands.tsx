import type { Contradiction } from '../../engine/reading/feature-form.ts';
import { sayContradiction, sizeFigure } from '../../engine/reading/say-readings.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { strikeOutAll } from '../../store/kept/readings.ts';
import { Button } from '../common/button.tsx';
import { useOnePress } from '../common/one-press.ts';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useStore } from '../common/store-context.ts';

type WhichStandsProps = {
  readonly contradiction: Contradiction;
  readonly unit: ShownUnit;
};

/** Two readings that can't both be right: the fitter says which one goes, nobody chooses for him. */
export function WhichStands({ contradiction, unit }: WhichStandsProps) {
  const store = useStore();
  const strike = useOnePress();
  const { one, other } = contradiction;
  return (
    <>
      <p role="alert">{sayContradiction(contradiction, unit)}</p>
      <p class="reading-pad-choice">
        {[one, other].map((group) => (
          <Button
            key={group === one ? 'one' : 'other'}
            onPress={() =>
              strike.take(
                () => saidIfRefused(strikeOutAll(store, group.readingIds, 'contradicted by another tool')),
                { commits: true },
              )
            }
          >
            Strike out {sizeFigure(group.estimate, unit)}
          </Button>
        ))}
      </p>
    </>
  );
}
