import type { ShownUnit } from '../../engine/length/show.ts';
import { openCuts, type OpenCut } from '../../store/kept/cuts.ts';
import type { Id } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { groundStores, olderCuts } from '../older/job-ground.ts';
import { CutRow } from './cut-row.tsx';
import { MACHINE_WORDS, MACHINES, materialWords, TOOL_WORDS } from './cut-words.ts';

/** Every cut of every job, so that all that goes with one machine, one material and one tool is cut together. */
export function AllCutsScreen() {
  const unit = useShownUnit();
  const found = useLive('all-cuts', ['cuts', 'jobs', ...groundStores], async (store) => {
    const cuts = await openCuts(store);
    return {
      cuts,
      older: await olderCuts(
        store,
        cuts.map(({ cut }) => cut),
      ),
    };
  });
  const open = found?.cuts;
  return (
    <Page
      title="All I have to cut"
      subtitle="by machine, material and tool"
      back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}
    >
      {open?.length === 0 && <EmptyLine>Nothing is left to cut in any open job.</EmptyLine>}
      {MACHINES.map((machine) => {
        const here = (open ?? []).filter(({ cut }) => cut.machine === machine);
        return (
          here.length > 0 && (
            <MachineGroup
              key={machine}
              words={MACHINE_WORDS[machine]}
              cuts={here}
              older={found?.older ?? new Set()}
              unit={unit}
            />
          )
        );
      })}
    </Page>
  );
}

type MachineGroupProps = {
  readonly words: string;
  readonly cuts: readonly OpenCut[];
  readonly older: ReadonlySet<Id>;
  readonly unit: ShownUnit;
};

function MachineGroup({ words, cuts, older, unit }: MachineGroupProps) {
  return (
    <section class="cuts-group">
      <h2>{`${words} · ${cuts.length}`}</h2>
      {groupsOf(cuts, unit).map(({ heading, cuts: together }) => (
        <div key={heading}>
          <h3>{heading}</h3>
          <ul>
            {together.map(({ cut, job }) => (
              <li key={cut.id}>
                <CutRow cut={cut} unit={unit} more={`${job.name}, ${cut.part}`} older={older.has(cut.id)} />
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

/** Cuts of one material with one tool, by the material's name; those nobody has said the material of come last. */
export function groupsOf(
  cuts: readonly OpenCut[],
  unit: ShownUnit,
): readonly { heading: string; cuts: readonly OpenCut[] }[] {
  const groups = new Map<string, OpenCut[]>();
  for (const open of cuts) {
    const key = `${open.cut.material === undefined ? '1' : '0'}${headingOf(open, unit)}`;
    groups.set(key, [...(groups.get(key) ?? []), open]);
  }
  return [...groups]
    .toSorted(([a], [b]) => a.localeCompare(b))
    .map(([key, together]) => ({ heading: key.slice(1), cuts: together }));
}

function headingOf({ cut }: OpenCut, unit: ShownUnit): string {
  return `${materialWords(cut.material, unit)}, ${TOOL_WORDS[cut.cuttingTool]}`;
}
