import { byEye, readable, type CheckOffer } from '../../reading/check-offer.ts';
import { largest, zero } from '../../length/length.ts';
import type { StackWant } from './spacer-stack.ts';

/**
 * What can be proved of a stack once it is together: the float or end play itself, or that it clamps.
 *
 * Units:   limits are the stack's own.
 * Source:  a direct reading beats any sum of parts.
 */
export function checksOfStack({ kind, limits }: StackWant): readonly CheckOffer[] {
  const { read, eye } = CHECKS[kind];
  return [{ ...read, limits: kind === 'end-play' ? readable(limits) : provedAtAll(limits) }, eye];
}

/** End play may be nothing; a float or a clamp of nothing is seized or loose, so its least is proved always. */
function provedAtAll(limits: StackWant['limits']): StackWant['limits'] {
  return { ...limits, lower: largest(zero, limits.lower) };
}

type StackChecks = { readonly read: Omit<CheckOffer, 'limits'>; readonly eye: CheckOffer };

const CHECKS: Readonly<Record<StackWant['kind'], StackChecks>> = {
  float: {
    read: {
      name: 'Float',
      by: 'gap',
      how: 'Nut torqued, no grease in the gap. Push what floats to one side and put a feeler in the gap at the other, or an indicator against it and slide it from end to end. Read it in three places round.',
      sizeName: 'direct',
    },
    eye: byEye(
      'Slides free by hand',
      'Nut torqued. Slide it from end to end all the way round: no tight spot.',
    ),
  },
  'end-play': {
    read: {
      name: 'End play',
      by: 'gap',
      how: 'Nut torqued. Indicator in line with the shaft, its foot on what stands still. Push and pull what turns: read the whole swing.',
      sizeName: 'direct',
    },
    eye: byEye('Turns free', 'Nut torqued. Turn it once round by hand: no tight spot, no grating.'),
  },
  clamp: {
    read: {
      name: 'Stands proud',
      by: 'depth',
      how: 'Put the parts together without the nut. Depth gauge on the face that must stay free: read how far the parts stand proud of it.',
      sizeName: 'directProud',
    },
    eye: byEye(
      'Clamped',
      'Nut torqued. What the nut holds can’t be turned by hand; what must turn still does.',
    ),
  },
};
