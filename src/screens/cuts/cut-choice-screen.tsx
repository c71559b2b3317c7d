import { cutName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import { materials } from '../../engine/material/tables/materials.ts';
import { changeCut, type CutChanges } from '../../store/cuts.ts';
import type { Cut } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { ChoiceRows } from './choice-rows.tsx';
import { MACHINES, MACHINE_WORDS, TOOL_WORDS } from './cut-words.ts';

const ASKED = {
  material: 'What is it made of?',
  machine: 'On which machine?',
  tool: 'Cut with which tool?',
} as const;
type Asked = keyof typeof ASKED;

export function isCutChoice(field: string | undefined): field is Asked {
  return field !== undefined && Object.hasOwn(ASKED, field);
}

/** One of the plain choices of a cut. */
export function CutChoiceScreen({ cut, asked }: { cut: Cut; asked: Asked }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const here = { at: 'cut', jobId: cut.jobId, cutId: cut.id } as const;
  const take = async (changes: CutChanges) => {
    const changed = await changeCut(store, cut.id, changes);
    if (changed.ok) go(here);
    else setTrouble(sayStore(changed.refusal));
  };
  return (
    <Page title={ASKED[asked]} subtitle={cutName(cut)} back={{ href: hrefOf(here), to: 'the cut' }}>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {asked === 'material' && (
        <ChoiceRows
          options={materials.map(({ id, name: words }) => ({ id, words }))}
          chosen={cut.material}
          onChoose={(material) => void take({ material })}
        />
      )}
      {asked === 'machine' && (
        <ChoiceRows
          options={MACHINES.map((id) => ({ id, words: MACHINE_WORDS[id] }))}
          chosen={cut.machine}
          onChoose={(machine) => void take({ machine })}
        />
      )}
      {asked === 'tool' && (
        <ChoiceRows
          options={[
            { id: 'hss', words: TOOL_WORDS.hss, more: 'a sharp edge that shaves fine' },
            { id: 'carbide', words: TOOL_WORDS.carbide, more: 'faster, but wants a deeper last pass' },
          ]}
          chosen={cut.cuttingTool}
          onChoose={(cuttingTool) => void take({ cuttingTool })}
        />
      )}
    </Page>
  );
}
