import { useState } from 'preact/hooks';
import { byLength } from '../../engine/length/length.ts';
import { insertThreads, isInchThread, type Thread } from '../../engine/thread/threads.ts';
import { Button } from '../common/button.tsx';
import './thread-picker.css';

type ThreadPickerProps = {
  readonly chosen: string | undefined;
  /** Which threads are offered; those that wire inserts are made for where nothing is said. */
  readonly threads?: readonly Thread[];
  /** A metric shop's threads come first. */
  readonly metricFirst?: boolean;
  readonly onThread: (designation: string) => unknown;
};

/** A thread in two presses: its size, then its pitch. */
export function ThreadPicker({
  chosen,
  threads = insertThreads,
  metricFirst = false,
  onThread,
}: ThreadPickerProps) {
  const [size, setSize] = useState(chosen === undefined ? undefined : sizeName(chosen));
  const pitches = threads.filter((thread) => sizeName(thread.designation) === size);
  const systems = [
    { title: 'Inch', threads: threads.filter(isInchThread) },
    { title: 'Metric', threads: threads.filter((thread) => !isInchThread(thread)) },
  ];
  return (
    <div class="thread-picker">
      {(metricFirst ? systems.toReversed() : systems).map((system) => (
        <Sizes key={system.title} {...system} size={size} onSize={setSize} />
      ))}
      <div class="thread-picker-pitches" role="group" aria-label="Pitch">
        {size === undefined && <p>Press the size, then the pitch.</p>}
        {pitches.map((thread) => (
          <Button
            key={thread.designation}
            chosen={thread.designation === chosen}
            onPress={() => onThread(thread.designation)}
          >
            {thread.designation.replace('x', ' × ')}
          </Button>
        ))}
      </div>
    </div>
  );
}

type SizesProps = {
  readonly title: string;
  readonly threads: readonly Thread[];
  readonly size: string | undefined;
  readonly onSize: (size: string) => void;
};

function Sizes({ title, threads, size, onSize }: SizesProps) {
  const bySize = threads.toSorted((a, b) => byLength(a.major, b.major));
  const names = [...new Set(bySize.map((thread) => sizeName(thread.designation)))];
  return (
    <section>
      <h2>{title}</h2>
      <div class="thread-picker-sizes" role="group" aria-label={`${title} sizes`}>
        {names.map((name) => (
          <Button key={name} chosen={name === size} onPress={() => onSize(name)}>
            {name}
          </Button>
        ))}
      </div>
    </section>
  );
}

// '7/16-20 UNF' is of size 7/16, 'M8x1.25' of size M8.
function sizeName(designation: string): string {
  return /^[^-x]+/.exec(designation)?.[0] ?? designation;
}
