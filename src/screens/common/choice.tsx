import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { ShownUnit } from '../../engine/length/show.ts';
import { changeSetting, putSetting } from '../../store/kept/settings.ts';
import { Button } from './button.tsx';
import { saidIfRefused } from './said-if-refused.ts';
import { useStore } from './store-context.ts';
import { useShownUnit } from './use-settings.ts';
import './choice.css';

/** A question with its few answers as keys, one of them pressed in. No fieldset: WebKit lays its legend out late, or never again. */
export function Choice({ title, children }: { title: string; children: ComponentChildren }) {
  const id = useId();
  return (
    <div class="choice" role="group" aria-labelledby={id}>
      <div id={id} class="choice-asked">
        {title}
      </div>
      <div class="choice-keys">{children}</div>
    </div>
  );
}

/**
 * Inches or millimetres, for every figure of the app and for a pad that nothing was typed into yet. Who goes over to
 * millimetres with a phone that writes commas, and chose no mark yet, gets commas with them.
 */
export function UnitChoice({ onChosen }: { onChosen?: (unit: ShownUnit) => void }) {
  const store = useStore();
  const shown = useShownUnit();
  const choose = (unit: ShownUnit) => {
    if (unit === 'mm' && shown !== unit && (1.5).toLocaleString().includes(','))
      void saidIfRefused(changeSetting(store, 'decimalMark', (kept) => kept ?? ','));
    void saidIfRefused(putSetting(store, 'shownUnit', unit));
    onChosen?.(unit);
  };
  return (
    <Choice title="Figures are shown in">
      <Button chosen={shown === 'in'} onPress={() => choose('in')}>
        inches
      </Button>
      <Button chosen={shown === 'mm'} onPress={() => choose('mm')}>
        millimetres
      </Button>
    </Choice>
  );
}
