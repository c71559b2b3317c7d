import { cutName } from '../../engine/thread/tap-name.ts';
import { inShopWords } from '../../engine/length/american-words.ts';
import { materialsFor } from '../../engine/material/tables/materials.ts';
import { changeCut, type CutChanges } from '../../store/kept/cuts.ts';
import type { Cut } from '../../store/base/records.ts';
import { go, hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { ChoiceRows } from './choice-rows.tsx';
import { MACHINES, MACHINE_WORDS, TOOL_WORDS } from './cut-words.ts';
import { keepMetalOf } from './known-metal.ts';

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
  const unit = useShownUnit();
  const { trouble, told } = useTold();
  const here = { at: 'cut', jobId: cut.jobId, cutId: cut.id } as const;
  const take = (changes: CutChanges) => told(changeCut(store, cut.id, changes), () => go(here));
  const takeMetal = (material: string) =>
    told(keepMetalOf(store, { ...cut, material }, true), () => take({ material }));
  return (
    <Page title={ASKED[asked]} subtitle={cutName(cut)} back={{ href: hrefOf(here), to: 'the cut' }}>
      <Trouble>{trouble}</Trouble>
      {asked === 'material' && (
        <ChoiceRows
          options={materialsFor(unit).map(({ id, name }) => ({ id, words: inShopWords(name, unit) }))}
          chosen={cut.material}
          onChoose={(material) => void takeMetal(material)}
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
