import type { Share } from './chain.ts';
import { absolute, isNegative } from '../../length/length.ts';
import type { LineUpAnswer } from './line-up.ts';
import type { Give } from './line-up-gives.ts';
import { parted, sizeName, sizeOrder } from './say-line-up-names.ts';
import { SOMETHING_WEAKER, sayWeaker } from '../../cut/say-strength.ts';
import { withUnit, figure, type ShownUnit } from '../../length/show.ts';
import { listed } from '../../length/say-words.ts';

/** What one size would have to do, and by how much. */
export type SaidGive = { readonly what: string; readonly how: string };

export function sayGiveInTwo({ of, by, to }: Give, unit: ShownUnit): SaidGive {
  const grows = !isNegative(by);
  const amount = withUnit(figure(absolute(by), unit), unit);
  const part = sizeName(of);
  const how = `by ${amount}, to ${withUnit(figure(to, unit), unit)}`;
  switch (parted(of).plain) {
    case 'disc':
    case 'sprocket':
      return { what: `${grows ? 'Space' : 'Set'} the ${part} ${grows ? 'out' : 'in'}`, how: `${how}.` };
    case 'slot':
      return { what: `Move the ${part} ${grows ? 'outward' : 'inward'} on its bracket`, how: `${how}.` };
    case 'bracket':
      return { what: `Thin the ${part}`, how: `${how}. ${sayWeaker(part)}` };
    case 'float':
      return {
        what: `Give the ${part === 'float' ? 'bracket' : part.replace('float', 'bracket')} less float`,
        how: `${how}.`,
      };
    case 'offset':
      return {
        what: `Let the wheel sit further ${grows ? 'right' : 'left'} than you asked`,
        how: `by ${amount}.`,
      };
    case 'hub':
      return { what: 'Take a narrower hub', how: `${how} over its faces.` };
    case 'plate':
      return { what: `Bring the ${part} in`, how: `${how}.` };
    case 'chainLine':
      return { what: `Move the ${part} ${grows ? 'outward' : 'inward'}`, how: `${how} from the middle.` };
    case 'wheelPlace':
      return {
        what: `Let the wheel sit further ${grows ? 'out' : 'in'}`,
        how: `${how} from the shoulder to its face.`,
      };
    case 'seat':
      return { what: 'Set the nut further out', how: `${how} from the shoulder.` };
    default:
      return {
        what: `Change ${part}`,
        how: `by ${figure(by, unit)}, to ${withUnit(figure(to, unit), unit)}.`,
      };
  }
}

/** The same in one sentence: `Space the disc out by .063, to .375.` */
export function sayGive(give: Give, unit: ShownUnit): string {
  const { what, how } = sayGiveInTwo(give, unit);
  return `${what} ${how}`;
}

/** What isn't judged for want of a size: a disc whose slot isn't known may rub, however well all else lines up, and so do pads that wear. */
export function sayNotJudged({
  openDiscs,
  openWear,
}: Pick<LineUpAnswer, 'openDiscs' | 'openWear'>): readonly string[] {
  const discs = openDiscs.map(({ disc, missing, face }) => {
    const lead = `Not finished: the ${disc.name.replace(' in slot', '')} may rub.`;
    if (face) return `${lead} Read the gap at its ${face === 'inside' ? 'inner' : 'outer'} face too.`;
    const wanted = missing.map((name) => (name === disc.slotWidth ? 'its slot’s width' : 'its thickness'));
    return `${lead} Give ${listed(wanted)}.`;
  });
  return openWear ? [...discs, WEAR_NOT_GIVEN] : discs;
}

const WEAR_NOT_GIVEN = 'Not finished: the float may not last the pads’ wear. Give how much they wear in all.';

/** Said beside ways that may take metal off a part: a disc or a sprocket that comes in, a slot that moves, a narrower hub. */
export function sayGivesStrength(gives: readonly Give[]): string {
  const mayTakeMetal = ({ of, by }: Give) => {
    const { plain } = parted(of);
    if (plain === 'disc' || plain === 'sprocket') return isNegative(by);
    return plain === 'slot' || plain === 'plate' || plain === 'hub';
  };
  return gives.some(mayTakeMetal) ? SOMETHING_WEAKER : '';
}

/** Where nothing alone is enough. */
export const NOTHING_GIVES =
  'No single size can give enough alone. Change two of them together, the wheel’s place among them.';

/** A sum of shares as a fitter writes it, what is added before what is taken off: `½ · between the legs − wheel centre`. */
export function sayShares(terms: readonly Share[], write: (name: string) => string = sizeName): string {
  const added = terms.filter(({ top }) => top > 0);
  const takenOff = terms.filter(({ top }) => top < 0);
  return [...added.toSorted(bySize), ...takenOff.toSorted(bySize)]
    .map(({ of, top, bottom }, index) => {
      const sign = top < 0 ? '−' : '+';
      const lead = index === 0 ? (top < 0 ? '−' : '') : ` ${sign} `;
      return `${lead}${times(Math.abs(top), bottom)}${write(of)}`;
    })
    .join('');
}

function bySize(a: Share, b: Share): number {
  return sizeOrder(a.of) - sizeOrder(b.of);
}

function times(top: number, bottom: number): string {
  if (bottom === 1) return top === 1 ? '' : `${top} · `;
  return top === 1 && bottom === 2 ? '½ · ' : `${top}/${bottom} · `;
}
