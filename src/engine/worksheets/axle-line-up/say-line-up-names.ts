import type { AxleLayout, AxleSide } from './axle-layout.ts';
import { capital } from '../../length/say-words.ts';

const OTHER: Readonly<Record<AxleSide, AxleSide>> = { left: 'right', right: 'left' };

type Named = { readonly layout: Pick<AxleLayout, 'name' | 'parts' | 'spacers'>; readonly side: AxleSide };

/** What a fitter calls a spacer: by where it sits. */
export function spacerName(name: string, { layout, side }: Named): string {
  const onStubAxle = layout.name === 'trailer-hub';
  const names: Readonly<Record<string, string>> = {
    far: onStubAxle ? 'Shoulder to hub' : `${capital(OTHER[side])} spacer`,
    inner: 'Hub to bracket',
    outer: onStubAxle ? 'Hub to nut' : layout.name === 'drum' ? 'Brake plate to leg' : 'Bracket to leg',
    sleeve: 'Sleeve',
    leftOuter: 'Left outer spacer',
    leftInner: 'Left inner spacer',
    rightInner: 'Right inner spacer',
    rightOuter: 'Right outer spacer',
    leftSleeve: 'Left sleeve',
    rightSleeve: 'Right sleeve',
  };
  return names[name] ?? name;
}

/** The letter that marks a spacer in the drawing and in the list; a sleeve runs through others and has none. */
export function spacerLetter(name: string, { parts, spacers }: Named['layout']): string {
  const inLine = parts.filter((part) => spacers.includes(part.name));
  const index = inLine.findIndex((part) => part.name === name);
  return index === -1 ? '' : String.fromCharCode(65 + index);
}

const SIZES: Readonly<Record<string, string>> = {
  width: 'between the legs',
  hub: 'hub',
  centre: 'wheel centre',
  offset: 'offset',
  disc: 'disc',
  slot: 'slot',
  bracket: 'bracket',
  float: 'float',
  plate: 'brake plate',
  sprocket: 'sprocket',
  chainLine: 'chain line',
  seat: 'shoulder to nut',
  mount: 'wheel face on the hub',
  wheelPlace: 'wheel face wanted',
  padWear: 'pads’ whole wear',
  slotWidth: 'slot’s width',
  discThickness: 'disc’s thickness',
  floatRead: 'side play read',
  discRunout: 'disc’s runout',
  centreRead: 'difference of the two sides, read',
  centreLeftRead: 'left side wider, read',
  centreRightRead: 'right side wider, read',
  discInsideRead: 'gap at the disc’s inner face, read',
  discOutsideRead: 'gap at the disc’s outer face, read',
};

/** What a size is called in a sentence: `left bracket`, `between the legs`. */
export function sizeName(name: string): string {
  const { side, plain } = parted(name);
  const called = SIZES[plain] ?? plain;
  return side === undefined ? called : `${side} ${called}`;
}

/** What was read on the machine, as it is spoken of: `left side play`, `wheel centre`. */
export function readName(name: string): string {
  return name.startsWith('centre') ? 'wheel centre' : sizeName(name).replace(/,? read$/, '');
}

/** The place of a size in a sum that reads from leg to leg. */
export function sizeOrder(name: string): number {
  const index = Object.keys(SIZES).indexOf(parted(name).plain);
  return index === -1 ? Infinity : index;
}

/** A size of one side is named `leftBracket`. */
export function parted(name: string): { readonly side?: string; readonly plain: string } {
  const [, side, rest] = /^(left|right)([A-Z].*)$/.exec(name) ?? [];
  if (side === undefined || rest === undefined) return { plain: name };
  return { side, plain: rest.charAt(0).toLowerCase() + rest.slice(1) };
}
