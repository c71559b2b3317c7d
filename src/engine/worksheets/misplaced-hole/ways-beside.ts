import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import type { WayBlock } from '../account.ts';
import type { MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';

/** The other ways to the same end, the one that weakens least and can be trusted most first. Common practice, no source. */
export function waysBeside(
  { inRightPlace }: MisplacedHoleQuestion,
  { others }: MisplacedHoleAnswer,
  unit: ShownUnit,
): readonly WayBlock[] {
  const size = (of: keyof typeof others) => withUnit(figure(others[of], unit), unit);
  return [
    inRightPlace
      ? {
          is: 'way',
          title: 'Open it where it is',
          detail: `Ream to ${size('inOtherPlace')}. The bushing is bored off its middle, and locked.`,
          stands: 'open',
          asks: 'axis',
        }
      : {
          is: 'way',
          title: 'Bore it in its right place',
          detail: `On a mill, to ${size('inOtherPlace')}. A plain bushing, nothing to lock.`,
          stands: 'open',
          asks: 'axis',
        },
    {
      is: 'way',
      title: 'Line-ream both parts together',
      detail: `Clamped as they belong: ${size('midway')} midway, ${size('alongOne')} along one hole. Then a larger pin, or plain bushings.`,
      stands: 'open',
    },
    {
      is: 'way',
      title: 'Move the other hole',
      detail: 'Where that part has more metal round it, by the same ways.',
      stands: 'open',
    },
    {
      is: 'way',
      title: 'Weld it up and drill anew',
      detail: 'Last of all: heat draws and softens it. Never on a cast or hardened part.',
      stands: 'open',
    },
  ];
}
