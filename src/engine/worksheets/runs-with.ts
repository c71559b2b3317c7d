import type { CutKind } from '../length/metal-on.ts';
import type { WaysOutQuestion } from '../ways-out/ways-out.ts';
import { isJoint } from '../fit/joint-limits.ts';
import { materialNamed } from '../material/tables/materials.ts';
import type { GivenSize } from './given.ts';

/** What a worksheet knows of the part that is cut: what it runs with and how, and the metal round it. */
export type RunsWith = Partial<
  Pick<
    WaysOutQuestion,
    'mate' | 'joint' | 'fitClass' | 'system' | 'wall' | 'depth' | 'partMetal' | 'bushingMetal'
  >
>;

type HoleGiven = {
  readonly size: (name: 'bore' | 'pin') => GivenSize | undefined;
  readonly choice: (name: 'joint') => string | undefined;
};

/** The same of any worksheet of a pin in its hole: a bore runs with the pin, a shaft in the bore. */
export function holeRunsWith(given: HoleGiven, of: CutKind): RunsWith {
  const mate = given.size(of === 'bore' ? 'pin' : 'bore');
  const joint = given.choice('joint');
  return { ...(mate && { mate }), ...(isJoint(joint) && { joint }) };
}

/** The metals of part and bushing, where they were said. */
export function metalsOf(given: {
  readonly choice: (name: 'partMetal' | 'bushingMetal') => string | undefined;
}): RunsWith {
  const partMetal = materialNamed(given.choice('partMetal'));
  const bushingMetal = materialNamed(given.choice('bushingMetal'));
  return { ...(partMetal && { partMetal }), ...(bushingMetal && { bushingMetal }) };
}
