import { marked } from '../../length/decimal-text.ts';
import { worksheet } from '../worksheet.ts';
import { steeringAccount } from './account.ts';
import { steeringFields } from './fields.ts';
import { steeringQuestion, USUAL_RAKE_WITHIN_DEGREES } from './question.ts';
import { saySteeringRefusal } from './say-steering.ts';
import { steeringGeometry } from './steering-geometry.ts';

const AS_IT_IS = 'as it is';

/** Rake, trail and ride height before and after a swap of fork, wheel or tyre. */
export const steeringWorksheet = worksheet({
  name: 'Steering geometry',
  asks: 'What do rake, trail and ride height become with another fork, wheel or tyre?',
  fields: steeringFields,
  needs: ['rake', 'frontRadius', 'clampOffset', 'rearRadius', 'wheelbase'],
  starts: {},
  lacks: 'It needs rake, both axles’ heights, the clamps’ offset and the wheelbase.',
  canKill: true,
  question: steeringQuestion,
  answer: ({ before, change }) => steeringGeometry(before, change),
  sayRefusal: saySteeringRefusal,
  assumed: () => [{ field: 'rakeWithin', words: `rake to ±${marked(USUAL_RAKE_WITHIN_DEGREES)}°` }],
  usual: () => ({
    axleLead: 'none',
    extraAngle: 'none: the fork leans as the steering axis does',
    rakeWithin: `usual: ${marked(USUAL_RAKE_WITHIN_DEGREES)} degrees, a digital level (common practice, no source)`,
    forkLonger: AS_IT_IS,
    newFrontRadius: AS_IT_IS,
    newRearRadius: AS_IT_IS,
    rearHigher: AS_IT_IS,
    newClampOffset: AS_IT_IS,
    newExtraAngle: AS_IT_IS,
    newAxleLead: AS_IT_IS,
  }),
  account: steeringAccount,
  demo: {
    title: 'Longer fork',
    sizes: {
      frontRadius: '12.2 in',
      clampOffset: '2 in',
      rearRadius: '12 in',
      wheelbase: '57 in',
      forkLonger: '1 in',
    },
    choices: { rake: '27' },
  },
});
