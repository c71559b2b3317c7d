import { useState } from 'preact/hooks';
import { sayMadeOne, sayOnePart, sayUnproved } from '../../../engine/worksheets/spacer-stack/say-stack.ts';
import { withUnit, showBand, type ShownUnit } from '../../../engine/length/show.ts';
import {
  onePartInPlaceOf,
  type StackPart,
  type StackQuestion,
} from '../../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { onePart } from '../../../engine/worksheets/spacer-stack/stack-one-part.ts';
import { Button, LinkButton } from '../../common/button.tsx';

type OnePartProps = {
  readonly parts: readonly StackPart[];
  /** Left out while the stack isn't known whole. */
  readonly question: StackQuestion | undefined;
  readonly unit: ShownUnit;
  /** Where these parts' one part goes to be cut. */
  readonly cutAt: (places: readonly number[]) => string;
};

/** One spacer made in place of several: their sum, and the length that brings what is wanted as well. */
export function OnePart({ parts, question, unit, cutAt }: OnePartProps) {
  const [isOpen, setOpen] = useState(false);
  const [chosen, setChosen] = useState<readonly number[]>([]);
  const toggle = (index: number) =>
    setChosen(
      chosen.includes(index)
        ? chosen.filter((one) => one !== index)
        : [...chosen, index].sort((a, b) => a - b),
    );
  const replaced = parts.filter((_, index) => chosen.includes(index));
  const isSeveral = replaced.reduce((so, { count }) => so + count, 0) > 1;
  const made = question && isSeveral ? onePart(question, chosen)?.made : undefined;
  if (!isOpen)
    return (
      <div class="one-part-keys not-printed">
        <Button onPress={() => setOpen(true)}>One part in place of several</Button>
      </div>
    );
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
      {isSeveral && <Same parts={replaced} unit={unit} />}
      {question && made && (
        <p class="worksheet-said">
          {sayMadeOne(made, question.want, unit)}
          {!made.proved && ` ${sayUnproved(made, question.want, question.direct !== undefined, unit)}`}
        </p>
      )}
      {made && !made.isShim && (
        <div class="one-part-keys not-printed">
          <LinkButton href={cutAt(chosen)}>Cut the one part</LinkButton>
        </div>
      )}
    </section>
  );
}

function Same({ parts, unit }: Pick<OnePartProps, 'parts' | 'unit'>) {
  const { length, band } = onePartInPlaceOf(parts);
  const known = withUnit(showBand(band.halfWidth, unit), unit);
  return <p class="worksheet-said">{`${sayOnePart(parts, length, unit)} It is known to ${known}.`}</p>;
}
