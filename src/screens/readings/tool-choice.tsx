import { useState } from 'preact/hooks';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { goBackTo, hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { kindName } from './feature-kinds.ts';
import type { Measuring } from './use-measuring.ts';
import { isZeroChecked, noteZeroCheck } from './zero-checks.ts';
import './tool-choice.css';

type ToolChoiceProps = {
  readonly back: string;
  readonly kind: FeatureKind;
  readonly measuring: Measuring;
  readonly onChange: (by: { readonly toolId: string }) => void;
};

/** Which tool takes the next readings, and whether its zero was checked. */
export function ToolChoice({ back, kind, measuring, onChange }: ToolChoiceProps) {
  const unit = useShownUnit();
  const [checked, setChecked] = useState(isZeroChecked(measuring.tool.id, Date.now()));
  const choose = (toolId: string) => {
    onChange({ toolId });
    goBackTo(back);
  };
  const check = () => {
    noteZeroCheck(measuring.tool.id, checked ? undefined : Date.now());
    setChecked(!checked);
  };
  return (
    <Page title={`${kindName(kind)}: measured with`} back={{ href: back, to: 'the pad' }}>
      <div class="tool-choice-zero">
        <Button chosen={checked} onPress={check}>
          {checked ? 'Zero checked today' : 'Zero checked on closed jaws or a block'}
        </Button>
        <p>
          A checked zero takes the zero’s error out. Scale and jaws still err alike on sizes that are alike.
        </p>
      </div>
      <ul>
        {measuring.suited.map((tool) => (
          <li key={tool.id}>
            <Row
              title={tool.name}
              detail={`${tool.id !== measuring.tool.id ? '' : measuring.isUsual ? 'usual · ' : 'in use · '}${rangeWords(tool, unit)}`}
              figure={`±${show(tool.mpe, unit)}`}
              onPress={() => choose(tool.id)}
            />
          </li>
        ))}
      </ul>
      <div class="tool-choice-zero">
        <LinkButton href={hrefOf({ at: 'shop' })}>Tools are kept in Shop</LinkButton>
      </div>
    </Page>
  );
}

/** From where to where a tool reads. */
export function rangeWords(tool: Measuring['tool'], unit: ShownUnit): string {
  if (!tool.most) return '';
  return tool.least
    ? `${show(tool.least, unit)} to ${show(tool.most, unit)}`
    : `up to ${show(tool.most, unit)}`;
}
