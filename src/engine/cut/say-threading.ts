import { marked } from '../length/decimal-text.ts';
import { isLess, minus, plus, times, type Length } from '../length/length.ts';
import { figure, show, type ShownUnit } from '../length/show.ts';
import type { Threading } from './cut.ts';

/**
 * How a thread is cut with a single point: said where the cut is offered, on its page, at the lathe and on the sheet.
 *
 * Source:  29.5° for a 60° thread, the slide across back to zero for each pass, spring passes: common practice, no source.
 */
export function sayThreading(
  { wire, pitch, infeed, hand }: Threading,
  from: Length | undefined,
  unit: ShownUnit,
): readonly string[] {
  const most = from && mostOnFlanks({ wire, pitch, from });
  return [
    infeed === 'flank'
      ? sayFlank(hand)
      : 'Feed straight in by the cross slide; zero it where the tool touches.',
    hand === 'right'
      ? 'Right hand: the tool travels toward the chuck.'
      : 'Left hand: begin in the run-out groove; the tool travels away from the chuck.',
    `Measure over three wires of ${show(wire, unit)}${most ? `, from ${show(most, unit)} down` : ''}.`,
    'Two spring passes at the last setting before you measure.',
  ];
}

/** The same in one look at the lathe: which way, over which wires, from which size on. */
export function sayThreadingShort(
  { wire, pitch, hand }: Threading,
  from: Length | undefined,
  unit: ShownUnit,
): string {
  const most = from && mostOnFlanks({ wire, pitch, from });
  const way = hand === 'right' ? 'Toward the chuck' : 'Left hand, away from the chuck';
  return `${way}; wires ${figure(wire, unit)}${most ? ` from ${figure(most, unit)} down` : ''}.`;
}

function sayFlank(hand: Threading['hand']): string {
  const toward = hand === 'right' ? 'the tailstock' : 'the chuck';
  return `Compound ${marked('29.5')}° off square, its handle toward ${toward}. Feed with it; each pass begins with the cross slide at its zero.`;
}

/**
 * The most that wires can read while they lie on the flanks: over that they sit on the crests still.
 *
 * Units:   `from` is the size over the wires as if they lay in the thread when its tool just touches, D + 3W − 0.288675P;
 *          where they touch the crests' edges the size over them is D + 1.5W.
 * Source:  geometry of a 60° groove.
 */
export function mostOnFlanks({
  wire,
  pitch,
  from,
}: Pick<Threading, 'wire' | 'pitch'> & { readonly from: Length }): Length {
  return plus(minus(from, times(wire, '1.5')), times(pitch, '0.288675'));
}

/** Why a size can't be one over the wires, or nothing. */
export function sayOnCrests(
  threading: Threading,
  { from, measured }: { readonly from: Length; readonly measured: Length },
  unit: ShownUnit,
): string {
  const most = mostOnFlanks({ ...threading, from });
  if (!isLess(most, measured)) return '';
  return `Over ${show(most, unit)} the wires sit on the crests. Cut deeper, then measure over them.`;
}
