import { useEffect, useState } from 'preact/hooks';
import { sayOnDial } from '../../engine/cut/say-cuts.ts';
import type { Length } from '../../engine/length/length.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { announce, tick } from '../common/announce.ts';
import type { HalfTyped } from '../common/pad-text.ts';
import { speak, type useSayAloud } from '../common/speech.ts';
import { useTwoPlaces } from '../common/two-places.ts';
import { saidAloud } from './said-aloud.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import type { useMeasured } from './use-measured.ts';
import { usePasses } from './use-passes.ts';

const FIGURE_FIRST = 'Touch the figure first, then the key.';

export type Cutting = ReturnType<typeof useCutting>;

type AtHand = {
  readonly measured: ReturnType<typeof useMeasured>;
  readonly aloud: ReturnType<typeof useSayAloud>;
};

/** What is done at the machine without measuring, and the sentence that answered the last press. */
export function useCutting(at: LatheCut, { measured, aloud }: AtHand) {
  const passes = usePasses(at);
  const places = useTwoPlaces();
  const [note, setNote] = useState('');
  const { dialled, progress } = at;
  const inWords = (take: Length) => sayOnDial({ of: at.cut.of, dial: at.dial, take }, at.dialUnit);
  // The pass that comes after one that was cut without measuring; a measured one is read out as it is logged.
  useEffect(() => {
    if (aloud?.isOn && dialled.length > 0) speak(saidAloud(at, measured.unit));
  }, [dialled.length]);
  const tell = (sentence: string) => {
    setNote(sentence);
    announce(sentence);
  };
  const cutItNext = async () => {
    places.dim();
    tick();
    const cut = await passes.cutIt();
    if (!cut.ok) return tell(sayStore(cut.refusal));
    if (!cut.value) return tell('Every pass of the plan is cut. Stop the spindle and measure it.');
    setNote('');
    return announce(`Counted as cut, not measured: ${inWords(cut.value)}. It can be taken back.`);
  };
  const takeBack = async () => {
    const last = dialled.at(-1);
    const back = await passes.takeBack();
    if (!back.ok) return tell(sayStore(back.refusal));
    return tell(`Taken back: ${last ? inWords(last) : ''} was not cut.`);
  };
  // Until it is said which slide makes it, no dial can be set.
  const canBeSet = progress.next !== undefined && progress.next.dial.slide !== 'to-choose';
  return {
    note,
    tell,
    isLit: places.isLit,
    takeBack,
    /** Left out where no pass is planned. */
    ...((canBeSet || dialled.length > 0) && { cutItNext }),
    cutItByFinger: (event: MouseEvent) => (places.takes(event) ? void cutItNext() : tell(FIGURE_FIRST)),
    touchFigure: () => {
      setNote('');
      places.light();
    },
    type: (half: HalfTyped) => {
      setNote('');
      measured.change(half);
    },
  };
}
