import { cutName, tapOfCut } from '../../engine/thread/tap-name.ts';
import { isMore, zero } from '../../engine/length/length.ts';
import { figureBetween, show, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import type { Cut } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import '../common/row.css';
import { OlderMark } from '../older/older-mark.tsx';
import { CutMark } from './cut-mark.tsx';
import { leftToTake, presentSize } from './cut-now.ts';
import { assumedOf, hasItsOwnSize, materialWords, STATE_WORDS, strengthOf } from './cut-words.ts';
import './cut-row.css';

type CutRowProps = {
  readonly cut: Cut;
  readonly unit: ShownUnit;
  /** What stands under the name: the job, where cuts of several are listed. */
  readonly more?: string;
  /** Where the heading over it says the state already. */
  readonly stateIsSaid?: boolean;
  /** Its figures are older than the sizes they were worked out from. */
  readonly older: boolean;
};

/** One cut of a list: its name, where to cut to, how much is left, its part, and the state it is in. */
export function CutRow({ cut, unit, more, stateIsSaid = false, older }: CutRowProps) {
  const { part, material, state, target, lower, upper } = cut;
  const said = [more ?? [part, material && materialWords(material, unit)].filter((word) => word).join(', ')];
  return (
    <a class="row cut-row" href={hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id })}>
      <CutMark state={state} spoken={!stateIsSaid} />
      <span class="cut-row-words">
        <strong class="cut-row-name">{cutName(cut)}</strong>
        <span class="cut-row-size">
          <strong>{ownSize(cut) ?? figureBetween(target.exact, lower.exact, upper.exact, unit)}</strong>
          <span>
            {[`${showBetween(lower.exact, upper.exact, unit)} ${unit}`, assumedOf(cut)]
              .filter(Boolean)
              .join('; ')}
          </span>
        </span>
        {older && <OlderMark />}
        <span class="cut-row-take">{takeWords(cut, unit)}</span>
        {strengthOf(cut) !== '' && <span class="cut-row-strength">{strengthOf(cut)}</span>}
        <span class="cut-row-more">{(stateIsSaid ? said : [...said, STATE_WORDS[state]]).join(' · ')}</span>
      </span>
      <span class="row-arrow" aria-hidden="true" />
    </a>
  );
}

/** What a drill or a tap is called stands for its size. */
function ownSize(cut: Cut): string | undefined {
  return cut.drill ?? tapOfCut(cut);
}

/** How much is still to come off, or what it measures once it is done. */
export function takeWords(cut: Cut, unit: ShownUnit): string {
  const present = presentSize(cut);
  if (cut.state !== 'to-cut' && cut.state !== 'cutting')
    return present ? `measures ${show(present.exact, unit)}` : STATE_WORDS[cut.state];
  if (hasItsOwnSize(cut)) return `hole ${show(cut.target.exact, unit)}`;
  const left = leftToTake(cut);
  if (!left) return 'blank not measured yet';
  return isMore(left, zero) ? `${show(left, unit)} to take` : 'nothing left to take';
}
