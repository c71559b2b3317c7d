import { touchingNone, withSystem, type Touched } from '../../engine/job/safety.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { SYSTEMS } from '../common/system-names.ts';

type SystemsChoiceProps = {
  readonly touched: Touched;
  /** From what is chosen then: the press before this one may not be drawn yet. */
  readonly onChange: (change: (touched: Touched) => Touched) => void;
};

/** Which systems a job touches; brake, steering, axle and wheel make it safety-critical. Nothing is chosen beforehand. */
export function SystemsChoice({ touched, onChange }: SystemsChoiceProps) {
  const { systems, touchesNone } = touched;
  return (
    <Choice title="What it touches">
      {SYSTEMS.map((system) => (
        <Button
          key={system}
          chosen={systems.includes(system)}
          onPress={() => onChange((before) => withSystem(before, system))}
        >
          {system}
        </Button>
      ))}
      <Button
        chosen={systems.length === 0 && touchesNone === true}
        onPress={() => onChange(() => touchingNone)}
      >
        none of these
      </Button>
    </Choice>
  );
}
