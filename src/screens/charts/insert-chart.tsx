import { STI_CAUTION, tapName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import { sayDrillSize, sayPercent } from '../../engine/worksheets/thread-insert/say-insert.ts';
import { figure, show } from '../../engine/length/show.ts';
import { insertDrill, insertLimits } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { isInchThread, threadNamed, type Thread } from '../../engine/thread/threads.ts';
import { Row } from '../common/row.tsx';
import { ThreadPicker } from '../worksheets/thread-picker.tsx';
import { useAnswerInView } from './use-answer-in-view.ts';
import '../worksheets/input-rows.css';

/** The drill and the limits of the hole for any wire thread insert. */
export function InsertChart() {
  const [designation, setDesignation] = useState<string>();
  const thread = designation === undefined ? undefined : threadNamed(designation);
  const chart = useAnswerInView(designation);
  return (
    <main aria-label="Thread inserts" ref={chart}>
      <h1 class="unseen">Thread inserts</h1>
      {thread && <InsertCard thread={thread} />}
      <ThreadPicker chosen={designation} onThread={setDesignation} />
    </main>
  );
}

function InsertCard({ thread }: { thread: Thread }) {
  const unit = isInchThread(thread) ? 'in' : 'mm';
  const limits = insertLimits(thread);
  return (
    <section class="input-rows" aria-live="polite">
      <h2>{thread.designation.replace('x', ' × ')}</h2>
      {(['aluminium', 'steel'] as const).map((metal) => {
        const choice = insertDrill(thread, metal);
        return (
          <Row
            key={metal}
            title={sayDrillSize(choice.drill)}
            detail={`${metal}; ${choice.basis}`}
            figure={sayPercent(choice.percent)}
          />
        );
      })}
      <Row
        title={`Hole before the ${tapName(undefined, 'insert')}`}
        detail={limits.minorMostSource}
        figure={`${figure(limits.minorLeast, unit)} to ${figure(limits.minorMost, unit)}`}
      />
      <Row title={tapName(thread.designation, 'insert')} detail={STI_CAUTION} />
      <Row
        title="Tapped, at least"
        detail="pitch diameter, then major"
        figure={`${figure(limits.pitchLeast, unit)}, ${show(limits.majorLeast, unit)}`}
      />
    </section>
  );
}
