import { cutName } from '../../engine/thread/tap-name.ts';
import type { Cut } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { isDrilled as isTicked } from './mill-hole.ts';
import '../lathe/lathe-keys.css';

type MillKeysProps = {
  readonly cut: Cut;
  readonly isDrilled: boolean;
  readonly isLit: boolean;
  readonly onDrilled: (event: MouseEvent) => void;
};

/** The keys under the thumb at the mill: ticked and on takes a finger only after the place was touched. */
export function MillKeys({ cut: { id: cutId, jobId }, isDrilled, isLit, onDrilled }: MillKeysProps) {
  const here = { jobId, cutId } as const;
  return (
    <div class="lathe-keys">
      <button
        type="button"
        class="lathe-keys-main at-the-mill-drilled"
        data-lit={isLit || isDrilled}
        aria-describedby="mill-keys-how"
        onPointerDown={(event) => event.preventDefault()}
        onClick={onDrilled}
      >
        {isDrilled ? 'To the next hole' : 'Drilled, next'}
      </button>
      <span id="mill-keys-how" class="unseen">
        Takes a finger for a moment after the place was touched; a keyboard at any time.
      </span>
      <a class="lathe-keys-key" href={hrefOf({ at: 'lathe', ...here, field: 'measured' })}>
        Its size…
      </a>
      <a class="lathe-keys-key lathe-keys-more" href={hrefOf({ at: 'cut', ...here })}>
        More
      </a>
    </div>
  );
}

/** Every hole in the order of work with its tick, one press away. */
export function MillHoles({ holes, here }: { readonly holes: readonly Cut[]; readonly here: string }) {
  return (
    <ol class="mill-holes" aria-label="Holes of the plate">
      {holes.map((cut) => (
        <li key={cut.id}>
          <a
            class="mill-holes-hole"
            href={hrefOf({ at: 'lathe', jobId: cut.jobId, cutId: cut.id })}
            aria-label={`${cutName(cut)}, ${isTicked(cut) ? 'drilled' : 'to drill'}`}
            {...(cut.id === here && { 'aria-current': 'step' as const })}
          >
            {`${isTicked(cut) ? '✓' : '○'} ${shortName(cut)}`}
          </a>
        </li>
      ))}
    </ol>
  );
}

function shortName(cut: Cut): string {
  return cutName(cut)
    .replace(/^Hole /, '')
    .replace(/^Counterbore /, 'cb ');
}
