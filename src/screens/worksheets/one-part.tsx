import { useState } from 'preact/hooks';
import { sayOnePart } from '../../engine/say-stack.ts';
import { isMore, isZero, minus, negate, zero, type Length } from '../../engine/length.ts';
import { withUnit } from '../../engine/say-verdict.ts';
import { show, showBand, type ShownUnit } from '../../engine/show.ts';
import { onePartInPlaceOf, type StackPart, type StackWant } from '../../engine/spacer-stack.ts';
import { Button, LinkButton } from '../common/button.tsx';

type OnePartProps = {
  readonly parts: readonly StackPart[];
  readonly wantLess?: { readonly gap: Length; readonly want: StackWant };
  readonly unit: ShownUnit;
  /** Where these parts' one part goes to be cut; left out where the stack isn't known whole. */
  readonly cutAt?: (places: readonly number[]) => string;
};

/** One spacer made in place of several: their sum, and the length that would bring the wanted gap as well. */
export function OnePart({ parts, wantLess, unit, cutAt }: OnePartProps) {
  const [chosen, setChosen] = useState<readonly number[]>([]);
  const toggle = (index: number) =>
    setChosen(
      chosen.includes(index)
        ? chosen.filter((one) => one !== index)
        : [...chosen, index].sort((a, b) => a - b),
    );
  const replaced = parts.filter((_, index) => chosen.includes(index));
  return (
    <section class="one-part">
      <h2>One part in place of several</h2>
      <div class="one-part-keys" role="group" aria-label="Parts to replace">
        {parts.map((part, index) => (
          // Parts have no key of their own in the engine; their place is what is pressed.
          // oxlint-disable-next-line react/no-array-index-key
          <Button key={index} chosen={chosen.includes(index)} onPress={() => toggle(index)}>
            {part.name}
          </Button>
        ))}
      </div>
      {replaced.length > 1 && <Replaced parts={replaced} unit={unit} {...(wantLess && { wantLess })} />}
      {replaced.length > 1 && cutAt && (
        <div class="one-part-keys not-printed">
          <LinkButton href={cutAt(chosen)}>Cut the one part</LinkButton>
        </div>
      )}
    </section>
  );
}

function Replaced({ parts, wantLess, unit }: OnePartProps) {
  const { length, band } = onePartInPlaceOf(parts);
  const offAim =
    wantLess &&
    minus(wantLess.want.kind === 'clamp' ? negate(wantLess.want.aim) : wantLess.want.aim, wantLess.gap);
  const toAim = offAim && minus(length, offAim);
  return (
    <>
      <p class="worksheet-said">{`${sayOnePart(parts, length, unit)} It is known to ${withUnit(showBand(band.halfWidth, unit), unit)}.`}</p>
      {offAim && toAim && !isZero(offAim) && isMore(toAim, zero) && (
        <p class="worksheet-said">{`Made ${show(toAim, unit)}, it also brings the gap to ${show(wantLess.want.aim, unit)}.`}</p>
      )}
    </>
  );
}
