import { cutName } from '../../engine/thread/tap-name.ts';
import { useEffect, useRef, useState } from 'preact/hooks';
import { latheCautions } from '../../engine/cut/say-cuts-cautions.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { sayStandIn, sayTooFast } from '../../engine/cut/say-cuts-speed.ts';
import { sayOnDial, sayPlanNote } from '../../engine/cut/say-cuts.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { sayWarmFromCut } from '../../engine/reading/say-warmth.ts';
import { warmFromCut } from '../../engine/reading/temperature.ts';
import { hasItsOwnSize } from '../cuts/cut-words.ts';
import { hrefOf } from '../address.ts';
import { announce, tick } from '../common/announce.ts';
import { Page } from '../common/page.tsx';
import { OlderBasis } from '../cuts/cut-basis.tsx';
import { speak, useSayAloud } from '../common/speech.ts';
import { useTwoPlaces } from '../common/two-places.ts';
import { useWakeLock, type ScreenStays } from '../common/wake-lock.ts';
import { NextCut, WayTaken, mainFigure } from './next-cut.tsx';
import { LatheKeys } from './lathe-keys.tsx';
import { LeftToTake } from './left-to-take.tsx';
import { Message } from './measured-pad.tsx';
import { PastLimit, PastLimitSentence, WaysOutRows } from './past-limit.tsx';
import { saidAloud } from './said-aloud.ts';
import { ToSize } from './to-size.tsx';
import type { LatheCut } from './use-lathe-cut.ts';
import { useGiveSize } from './use-give-size.ts';
import { useMeasured } from './use-measured.ts';
import { nextTake, usePasses } from './use-passes.ts';
import './at-the-lathe.css';

const FIGURE_FIRST = 'Touch the figure first, then the key.';

/** The cut at the machine: cutting, to size, or past the limit. A gauge types into it at any time. */
export function AtTheLathe({ at }: { at: LatheCut }) {
  const stays = useWakeLock();
  const aloud = useSayAloud();
  const isAloud = aloud?.isOn === true;
  const measured = useMeasured(at, { isAloud });
  const passes = usePasses(at);
  const places = useTwoPlaces();
  const [note, setNote] = useState('');
  const { cut, job, progress, dialled } = at;
  const { unit } = measured;
  const give = useGiveSize(at, unit);
  const inWords = (take: NonNullable<ReturnType<typeof nextTake>>) =>
    sayOnDial({ of: cut.of, dial: at.dial, take }, at.dialUnit);

  // The pass that comes after one that was cut without measuring; a measured one is read out as it is logged.
  useEffect(() => {
    if (isAloud && dialled.length > 0) speak(saidAloud(at, unit));
  }, [dialled.length]);

  const tell = (sentence: string) => {
    setNote(sentence);
    announce(sentence);
  };
  const cutItNext = async () => {
    places.dim();
    tick();
    const take = await passes.cutIt();
    if (!take) return tell('Every pass of the plan is cut. Stop the spindle and measure it.');
    setNote('');
    return announce(`Counted as cut, not measured: ${inWords(take)}. It can be taken back.`);
  };
  const takeBack = async () => {
    await passes.takeBack();
    const [last] = dialled.slice(-1);
    tell(`Taken back: ${last ? inWords(last) : ''} was not cut.`);
  };
  const held = () =>
    tell(
      `${measured.half.typed} is half typed: Enter behind its last digit logs it, “I measured…” shows it.`,
    );
  const touch = () => {
    setNote('');
    places.light();
  };
  const isTold = measured.message !== undefined || note !== '';
  const told = useRef<HTMLDivElement>(null);
  // What is said stands above the keys, and together with them in view.
  useEffect(() => told.current?.scrollIntoView({ block: 'end' }), [isTold]);
  // Until it is said which slide makes it, no dial can be set.
  const canBeSet = progress.next !== undefined && progress.next.dial.slide !== 'to-choose';
  const hasNext = canBeSet || dialled.length > 0;
  const keys = (
    <LatheKeys
      jobId={job.id}
      cutId={cut.id}
      isToSize={progress.stage === 'to-size'}
      onGive={give && (() => void give().then((why) => why !== undefined && tell(why)))}
      {...(hasNext && {
        next: {
          isLit: places.isLit,
          onPress: (event: MouseEvent) => (places.takes(event) ? void cutItNext() : tell(FIGURE_FIRST)),
        },
      })}
      aloud={
        aloud && {
          isOn: aloud.isOn,
          change: (isOn) => {
            aloud.change(isOn);
            if (isOn) speak(saidAloud(at, unit));
          },
        }
      }
    />
  );
  const main = mainFigure(at, unit);
  const isOver = progress.stage === 'over';
  const limits = { lower: cut.lower.exact, upper: cut.upper.exact };
  const over = warmFromCut({ size: cut.target.exact, limits, material: at.material });
  const warm = isOver || hasItsOwnSize(cut) ? '' : sayWarmFromCut(over, unit, at.material !== undefined);
  return (
    <Page
      title={cutName(cut)}
      subtitle={[
        stays === 'on' ? '' : staysWords(stays),
        at.material?.name.replace(/ \(.*/, ''),
        cut.cuttingTool === 'hss' ? 'HSS' : 'carbide',
        stays === 'on' ? staysWords(stays) : '',
      ]
        .filter((part) => part !== undefined && part !== '')
        .join('\u00a0· ')}
      back={{ href: hrefOf({ at: 'cuts', jobId: job.id }), to: 'the cuts' }}
    >
      <div class="at-the-lathe">
        {at.older && <OlderBasis cut={cut} atTheLathe />}
        {progress.stage === 'to-size' && <ToSize at={at} unit={unit} />}
        {isOver && <PastLimit />}
        <div class="at-the-lathe-read">
          <LeftToTake
            label={main.label}
            figure={main.figure}
            unit={unit}
            spoken={`${main.spoken}. Type the size just measured, or touch it to light the keys.`}
            isLit={places.isLit}
            half={measured.half}
            isRefused={measured.message !== undefined}
            onTouch={touch}
            onTyped={(half) => {
              setNote('');
              measured.change(half);
            }}
            onLog={(by) => void measured.commit(by)}
            onNext={hasNext ? () => void cutItNext() : undefined}
            onHeld={held}
          />
          {isOver && <PastLimitSentence at={at} unit={unit} />}
          {progress.present && !isOver && <WayTaken at={at} unit={unit} />}
        </div>
        <div class="at-the-lathe-do">
          {progress.stage !== 'to-size' && !isOver && (
            <NextCut at={at} unit={unit} onTakeBack={() => void takeBack()} />
          )}
          <div class="at-the-lathe-keys" {...(isTold && { ref: told })}>
            {isTold && (
              <div class="at-the-lathe-note">
                {measured.message ? (
                  <Message measured={measured} message={measured.message} />
                ) : (
                  <p>{note}</p>
                )}
              </div>
            )}
            {keys}
          </div>
        </div>
        {isOver && <WaysOutRows at={at} unit={unit} />}
        <Cautions at={at} unit={unit} warm={warm} />
      </div>
    </Page>
  );
}

type CautionsProps = {
  readonly at: LatheCut;
  readonly unit: ShownUnit;
  /** What a part warm from the cut is measured over by; empty where it doesn't matter. */
  readonly warm: string;
};

/** What to mind, whatever is cut; then what this plan and this speed ask for. */
function Cautions({ at: { cut, progress, speed }, unit, warm }: CautionsProps) {
  const { plan } = progress;
  const sentences = [
    ...latheCautions({ operation: cut.operation }),
    sayStrengthOfCut(cut),
    warm,
    plan?.ok === true ? sayPlanNote(plan.value, unit) : '',
    ...(speed?.ok === true ? [sayTooFast(speed.value), sayStandIn(speed.value)] : []),
  ].filter((sentence) => sentence !== '');
  return (
    <aside class="at-the-lathe-cautions" aria-label="Cautions">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </aside>
  );
}

function staysWords(stays: ScreenStays): string {
  switch (stays) {
    case 'on':
      return 'screen stays on';
    case 'refused':
      return 'the phone may let the screen go dark';
    case 'not-here':
      return 'this phone can’t keep the screen on';
    case 'resting':
    case 'unknown':
      return '';
    default:
      return stays satisfies never;
  }
}
