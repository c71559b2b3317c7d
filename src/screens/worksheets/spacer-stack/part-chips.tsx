import { useState } from 'preact/hooks';
import { Button } from '../../common/button.tsx';
import { SHORT_PHONE, useMedia } from '../../common/use-media.ts';
import { UndoChange } from '../undo-change.tsx';
import { nextCount, type What } from './part-names.ts';
import './part-tape.css';

type PartChipsProps = {
  readonly jobId: string;
  readonly names: readonly string[];
  readonly what: What;
  readonly onWhat: (what: What) => void;
};

// Chosen: so many keys of 60 px stand beside count and more.
const BESIDE = 3;
const BESIDE_NARROW = 2;
const NARROW = '(max-width: 399px)';

/**
 * What the part on the pad is and how many of it there are; a name more is behind the last key, in place of the digits. On
 * a short phone all of it is behind one key beside the two of the foot: heading, drawing and question stay on the screen.
 */
export function PartChips({ jobId, names, what, onWhat }: PartChipsProps) {
  const [isMore, setMore] = useState(false);
  const few = useMedia(NARROW) ? BESIDE_NARROW : BESIDE;
  const isShort = useMedia(SHORT_PHONE);
  const first = isShort ? [] : names.slice(0, few);
  const isHidden = what.name !== '' && !first.includes(what.name);
  const choose = (name: string) => {
    onWhat({ ...what, name: what.name === name ? '' : name });
    setMore(false);
  };
  const chip = (name: string) => (
    <Button key={name} chosen={what.name === name} onPress={() => choose(name)}>
      {name}
    </Button>
  );
  return (
    <>
      <div class="part-chips" role="group" aria-label="What it is" data-more={isMore}>
        {first.map(chip)}
        {(!isShort || isMore) && (
          <Button
            label={`${what.count} of them`}
            chosen={what.count > 1}
            onPress={() => onWhat({ ...what, count: nextCount(what.count) })}
          >
            × {what.count}
          </Button>
        )}
        <Button
          label={isMore ? 'Back to the digits' : 'More names'}
          chosen={isHidden || (isShort && what.count > 1)}
          onPress={() => setMore(!isMore)}
        >
          {isMore ? 'digits' : isShort ? shortWords(what) : isHidden ? what.name : 'more'}
        </Button>
      </div>
      {isMore && (
        <div class="part-names" role="group" aria-label="More names">
          {names.map(chip)}
          <UndoChange jobId={jobId} />
        </div>
      )}
    </>
  );
}

/** Of what, and how many, where one key says both. */
function shortWords({ name, count }: What): string {
  const called = name === '' ? 'Name' : name;
  return count === 1 ? called : `${called} × ${count}`;
}
