import type { System } from '../../engine/safety.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { SYSTEMS } from '../common/system-names.ts';

type SystemsChoiceProps = {
  readonly chosen: readonly System[];
  /** From what is chosen then: the press before this one may not be drawn yet. */
  readonly onChange: (change: (chosen: readonly System[]) => readonly System[]) => void;
};

/** Which systems a job touches; brake, steering, axle and wheel make it safety-critical. */
export function SystemsChoice({ chosen, onChange }: SystemsChoiceProps) {
  return (
    <Choice title="What it touches">
      {SYSTEMS.map((system) => (
        <Button
          key={system}
          chosen={chosen.includes(system)}
          onPress={() => onChange((before) => toggled(before, system))}
        >
          {system}
        </Button>
      ))}
      <Button chosen={chosen.length === 0} onPress={() => onChange(() => [])}>
        none of these
      </Button>
    </Choice>
  );
}

function toggled(chosen: readonly System[], system: System): readonly System[] {
  return chosen.includes(system) ? chosen.filter((one) => one !== system) : [...chosen, system];
}
