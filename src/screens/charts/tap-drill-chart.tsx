import { useState } from 'preact/hooks';
import { sayDrillSize, sayPercent } from '../../engine/worksheets/thread-insert/say-insert.ts';
import { figure, show } from '../../engine/length/show.ts';
import { tapDrill, type TapDrill, type TapDrillAnswer } from '../../engine/thread/tap-drill.ts';
import { overThreeWires } from '../../engine/thread/three-wires.ts';
import { allThreads, isInchThread, threadNamed, type Thread } from '../../engine/thread/threads.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { ThreadPicker } from '../worksheets/thread-picker.tsx';
import { useAnswerInView } from './use-answer-in-view.ts';
import '../worksheets/input-rows.css';

const LEAST = 40;
const MOST = 100;
const USUAL = 75;

/** The hole before the tap, for any thread and any percentage of it. */
export function TapDrillChart() {
  const [designation, setDesignation] = useState<string>();
  const [percent, setPercent] = useState(USUAL);
  const thread = designation === undefined ? undefined : threadNamed(designation);
  const chart = useAnswerInView(designation);
  return (
    <main aria-label="Tap drills" ref={chart}>
      <h1 class="charts-heading">
        {thread ? `Tap drills, ${thread.designation.replace('x', ' × ')}` : 'Tap drills'}
      </h1>
      {thread && (
        <>
          <PercentChoice percent={percent} onPercent={setPercent} />
          <TapCard thread={thread} percent={percent} />
        </>
      )}
      <ThreadPicker chosen={designation} threads={allThreads} onThread={setDesignation} />
    </main>
  );
}

function PercentChoice({ percent, onPercent }: { percent: number; onPercent: (percent: number) => void }) {
  const step = (by: number) => onPercent(Math.min(MOST, Math.max(LEAST, percent + by)));
  return (
    <div class="charts-percent" role="group" aria-label="Percent of thread">
      <Button label="5 percent less" onPress={() => step(-5)}>
        −5
      </Button>
      <Button label="1 percent less" onPress={() => step(-1)}>
        −1
      </Button>
      <output>{`${percent} %`}</output>
      <Button label="1 percent more" onPress={() => step(1)}>
        +1
      </Button>
      <Button label="5 percent more" onPress={() => step(5)}>
        +5
      </Button>
    </div>
  );
}

function TapCard({ thread, percent }: { thread: Thread; percent: number }) {
  const unit = isInchThread(thread) ? 'in' : 'mm';
  const answer = tapDrill(thread, percent);
  const { listed, limits } = answer;
  const wires = overThreeWires(thread);
  return (
    <section class="input-rows" aria-live="polite">
      <ul>
        <li>
          <Row title={`Hole for ${percent} % of thread`} figure={show(answer.hole, unit)} />
        </li>
        {drillsNear(answer).map(({ side, told }) => (
          <li key={side}>
            <Row
              title={sayDrillSize(told.drill)}
              detail={`${side}; ${limitWords(told, answer)}`}
              figure={sayPercent(told.percent)}
            />
          </li>
        ))}
        {listed && (
          <li>
            <Row
              title={sayDrillSize(listed.drill)}
              detail={`on the usual charts${listed.basis === 'memory' ? ', from memory, not looked up' : ''}; ${limitWords(listed, answer)}`}
              figure={sayPercent(listed.percent)}
            />
          </li>
        )}
        <li>
          <Row
            title={`Minor diameter, ${limits.fitClass}`}
            detail={isInchThread(thread) ? 'ASME B1.1' : 'ISO 965-1'}
            figure={`${figure(limits.minorLeast, unit)} to ${figure(limits.minorMost, unit)}`}
          />
        </li>
        <li>
          <Row
            title="Screw, over three wires"
            detail={`best wire ${show(wires.wire, unit)}, basic pitch diameter ${show(wires.pitchDiameter, unit)}`}
            figure={show(wires.overWires, unit)}
          />
        </li>
      </ul>
    </section>
  );
}

function drillsNear({ below, exact, above }: TapDrillAnswer) {
  return [
    { side: 'next smaller, more thread', told: below },
    { side: 'just that hole', told: exact },
    { side: 'next larger, less thread', told: above },
  ].flatMap(({ side, told }) => (told ? [{ side, told }] : []));
}

function limitWords({ insideLimits }: TapDrill, { limits }: TapDrillAnswer): string {
  return insideLimits ? `inside ${limits.fitClass}` : `outside ${limits.fitClass}`;
}
