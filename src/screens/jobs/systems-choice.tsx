import type { System } from '../../engine/safety.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { SYSTEMS } from '../common/system-names.ts';

type SystemsChoiceProps = {
  readonly chosen: readonly System[];
  readonly onChoose: (systems: readonly System[]) => void;
};

/** Which systems a job touches; brake, steering, axle and wheel make it safety-critical. */
export function SystemsChoice({ chosen, onChoose }: SystemsChoiceProps) {
  const toggle = (system: System) =>
    onChoose(chosen.includes(system) ? chosen.filter((one) => one !== system) : [...chosen, system]);
  return (
    <Choice title="What it touches">
      {SYSTEMS.map((system) => (
        <Button key={system} chosen={chosen.includes(system)} onPress={() => toggle(system)}>
          {system}
        </Button>
      ))}
      <Button chosen={chosen.length === 0} onPress={() => onChoose([])}>
        none of these
      </Button>
    </Choice>
  );
}
