import { absolute, isNegative } from '../../length/length.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import { sidePlayMiss } from './line-up-read.ts';
import { sideOf } from './say-line-up-shared.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { withUnit, figure, type ShownUnit } from '../../length/show.ts';
import { capital, uncapital } from '../../length/say-words.ts';

/** A difference whose side isn't known proves nothing where the wheel is wanted off the middle. */
export function sayCentreRead({ value, band, limits, verdict, terms }: LineUpCheck, unit: ShownUnit): string {
  const [term] = terms;
  const quantity = CENTRE_QUANTITIES[term?.of ?? ''];
  if (verdict.kind === 'too-close' && quantity === undefined)
    return 'Too close to call: which side is the wider one isn’t said. Read it by its side.';
  const words = sayVerdict(verdict, {
    quantity: quantity ?? 'two sides differ by',
    unit,
    limits,
    value,
    halfWidth: band.halfWidth,
  });
  return `Read: ${uncapital(words)}`;
}

const CENTRE_QUANTITIES: Readonly<Record<string, string>> = {
  centreLeftRead: 'left side wider by',
  centreRightRead: 'right side wider by',
};

/** The side play that was read, and what it takes from the part that is cut last. */
export function saySidePlay(check: LineUpCheck, unit: ShownUnit): string {
  const { name, value, band, limits, verdict } = check;
  const said = sayVerdict(verdict, {
    quantity: 'side play',
    unit,
    limits,
    value,
    halfWidth: band.halfWidth,
  });
  const miss = verdict.kind === 'no-good' ? sidePlayMiss(check) : undefined;
  const bracket = `${sideOf(name)}bracket`;
  const cure = !miss
    ? ''
    : isNegative(miss)
      ? ` Make the part between ${bracket} and leg ${withUnit(figure(absolute(miss), unit), unit)} longer, or shim it.`
      : ` Face ${withUnit(figure(miss, unit), unit)} off the part between ${bracket} and leg.`;
  return `${sideOf(name) === '' ? 'Read' : `${capital(sideOf(name))}bracket, read`}: ${uncapital(said)}${cure}`;
}

/** What is left beside a disc, by its sizes or as it was read. */
export function sayDisc(
  { name, value, band, limits, verdict, terms, direct }: LineUpCheck,
  unit: ShownUnit,
): string {
  const disc = name.replace(' in slot', '');
  const size = withUnit(figure(absolute(value), unit), unit);
  if (direct) {
    const face = terms.some(({ of }) => of.endsWith('nsideRead')) ? 'inner' : 'outer';
    const quantity = `gap at the ${disc}’s ${face} face`;
    return `Read: ${uncapital(sayVerdict(verdict, { quantity, unit, limits, value, halfWidth: band.halfWidth }))}`;
  }
  if (verdict.kind === 'good') return `Good: the ${disc} keeps ${size} clear of its slot at both ends.`;
  if (verdict.kind === 'no-good' && isNegative(value))
    return `The ${disc} runs ${size} into its slot before the float ends. Less float, or a wider slot.`;
  if (verdict.kind === 'no-good') {
    const least = limits.lower ? withUnit(figure(limits.lower, unit), unit) : '';
    return `The ${disc} keeps only ${size} of its slot; ${least} is least. Less float, or a wider slot.`;
  }
  return sayVerdict(verdict, {
    quantity: `room beside the ${disc}`,
    unit,
    limits,
    value,
    halfWidth: band.halfWidth,
  });
}
