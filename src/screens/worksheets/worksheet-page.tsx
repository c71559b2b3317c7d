import type { ComponentChildren } from 'preact';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { sayStrengthOfCuts } from '../../engine/cut/say-strength.ts';
import { latestUndo, undoLast } from '../../store/undo.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { undoWords } from '../common/undo-words.ts';
import { ReadingDoubts } from './reading-doubts.tsx';
import { useWaysToCut } from './use-ways-to-cut.ts';
import { WorksheetChecks } from '../fit-up/worksheet-checks.tsx';
import { WarmthKey } from './warm-sizes-screen.tsx';
import { doubtsOf, type WorksheetData } from './worksheet-data.ts';
import { WithAssumed } from './said-assumed.tsx';
import './worksheet-page.css';

type WorksheetPageProps = {
  readonly data: WorksheetData;
  readonly subtitle: string;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
};

// They are about a wheel and its axle, whatever was ticked on the job.
const CAN_KILL: ReadonlySet<string> = new Set(['axle-line-up', 'bearing-seat']);

/** They say beside each way what its metal means. */
const SAY_THEIR_OWN: ReadonlySet<string> = new Set([
  'spacer-stack',
  'hole-and-pin',
  'thread-insert',
  'bushing',
]);

/** The frame of every worksheet: its name, the answer, the caution where it matters, and the way back from a change. */
export function WorksheetPage({ data, subtitle, foot, children }: WorksheetPageProps) {
  const { job, worksheet } = data;
  const critical = isSafetyCritical(job);
  const ways = useWaysToCut(data) ?? [];
  // What was worked out from readings that contradict each other is not handed to the machine.
  const canBeCut = ways.length > 0 && doubtsOf(data).length === 0;
  const strength = SAY_THEIR_OWN.has(worksheet.kind)
    ? []
    : sayStrengthOfCuts(ways.flatMap(({ offers }) => offers));
  const action = foot ?? (canBeCut ? <CutIt data={data} /> : undefined);
  return (
    <Page
      title={worksheet.title}
      subtitle={[critical ? 'safety-critical' : '', subtitle].filter((part) => part !== '').join(' · ')}
      back={{ href: hrefOf({ at: 'worksheets', jobId: job.id }), to: 'the worksheets' }}
      aside={
        <LinkButton
          href={hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'about' })}
        >
          About
        </LinkButton>
      }
      {...(action !== undefined && { foot: action })}
    >
      <ReadingDoubts data={data} />
      <WithAssumed data={data}>{children}</WithAssumed>
      <WarmthKey data={data} />
      {strength.map((sentence) => (
        <p key={sentence} class="worksheet-said">
          {sentence}
        </p>
      ))}
      <WorksheetChecks data={data} />
      {(critical || CAN_KILL.has(worksheet.kind)) && <SafetyCaution />}
      <UndoChange jobId={job.id} />
    </Page>
  );
}

/** The verdict, what to do about it and why: one column of a wide screen, with what it stands on beside it. */
export function WorksheetAnswer({ children }: { children: ComponentChildren }) {
  return <div class="worksheet-answer">{children}</div>;
}

/** The main action of an answer that asks for metal to be taken. */
function CutIt({ data: { job, worksheet } }: { data: WorksheetData }) {
  return (
    <LinkButton
      kind="main"
      href={hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'cuts' })}
    >
      Cut it
    </LinkButton>
  );
}

export function UndoChange({ jobId }: { jobId: string }) {
  const store = useStore();
  const last = useLive(`undo-change/${jobId}`, ['undo'], (from) => latestUndo(from, jobId));
  if (!last?.label.startsWith('Changed')) return null;
  const undo = async () => {
    const undone = await undoLast(store, last.id);
    announce(undone.ok ? `Undone: ${last.label}` : 'That could not be undone.');
  };
  return (
    <div class="worksheet-remove not-printed">
      <Button onPress={() => undo()}>{undoWords(last.label)}</Button>
    </div>
  );
}
