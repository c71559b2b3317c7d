import { cutName } from '../../engine/thread/tap-name.ts';
import { useEffect, useRef } from 'preact/hooks';
import { latheCautions } from '../../engine/cut/say-cuts-cautions.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { sayStandIn, sayTooFast } from '../../engine/cut/say-cuts-speed.ts';
import { sayPlanNote } from '../../engine/cut/say-cuts.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { sayWarmFromCut } from '../../engine/reading/say-warmth.ts';
import { warmFromCut } from '../../engine/reading/temperature.ts';
import { hasItsOwnSize, materialWords, threadingWords } from '../cuts/cut-words.ts';
import { hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { OlderBasis } from '../cuts/cut-basis.tsx';
import { speak, useSayAloud } from '../common/speech.ts';
import { useWakeLock, type ScreenStays } from '../common/wake-lock.ts';
import { NextCut, StepsFirst, WayTaken, mainFigure } from './next-cut.tsx';
import { LatheKeys } from './lathe-keys.tsx';
import { LeftToTake } from './left-to-take.tsx';
import { Message } from './measured-pad.tsx';
import { PastLimit, PastLimitSentence, WaysOutRows } from './past-limit.tsx';
import { saidAloud } from './said-aloud.ts';
import { ToSize } from './to-size.tsx';
import { useCutting, type Cutting } from './use-cutting.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import { useGiveSize } from './use-give-size.ts';
import { useMeasured } from './use-measured.ts';
import './at-the-lathe.css';

/** The cut at the machine: cutting, to size, or past the limit. A gauge types into it at any time. */
export function AtTheLathe({ at }: { at: LatheCut }) {
  const stays = useWakeLock();
  const aloud = useSayAloud();
  const measured = useMeasured(at, { isAloud: aloud?.isOn === true });
  const cutting = useCutting(at, { measured, aloud });
  const { cut, job, progress } = at;
  const { unit } = measured;
  const isOver = progress.stage === 'over';
  return (
    <Page
      title={cutName(cut)}
      subtitle={whatItIsCutOf(at, stays, unit)}
      back={{ href: hrefOf({ at: 'cuts', jobId: job.id }), to: 'the cuts' }}
    >
      <div class="at-the-lathe">
        {at.older && <OlderBasis cut={cut} atTheLathe />}
        {progress.stage === 'to-size' && <ToSize at={at} unit={unit} />}
        {isOver && <PastLimit />}
        <WhatIsRead at={at} measured={measured} cutting={cutting} />
        <div class="at-the-lathe-do">
          {progress.stage !== 'to-size' && !isOver && (
            <NextCut at={at} unit={unit} onTakeBack={() => void cutting.takeBack()} />
          )}
          <KeysAndNote at={at} measured={measured} cutting={cutting} aloud={aloud} />
        </div>
        {isOver && <WaysOutRows at={at} unit={unit} />}
        <Cautions at={at} unit={unit} />
      </div>
    </Page>
  );
}

function whatItIsCutOf({ material, cut }: LatheCut, stays: ScreenStays, unit: ShownUnit): string {
  const words = [material && materialWords(material.id, unit), cut.cuttingTool === 'hss' ? 'HSS' : 'carbide'];
  // What the fitter can count on stands last, what he can't comes first.
  const all = stays === 'on' ? [...words, staysWords(stays)] : [staysWords(stays), ...words];
  return all.filter((part) => part !== undefined && part !== '').join('\u00a0· ');
}

type PartProps = {
  readonly at: LatheCut;
  readonly measured: ReturnType<typeof useMeasured>;
  readonly cutting: Cutting;
};

/** The one number, and how far the cut has come. */
function WhatIsRead({ at, measured, cutting }: PartProps) {
  const { half, unit, message } = measured;
  const { cutItNext } = cutting;
  const main = mainFigure(at, unit);
  const isOver = at.progress.stage === 'over';
  const held = () =>
    cutting.tell(`${half.typed} is half typed: Enter behind its last digit logs it, “I measured…” shows it.`);
  return (
    <div class="at-the-lathe-read">
      <LeftToTake
        label={main.label}
        figure={main.figure}
        unit={unit}
        spoken={`${main.spoken}. Type the size just measured, or touch it to light the keys.`}
        isLit={cutting.isLit}
        half={half}
        isRefused={message !== undefined}
        isNext={at.progress.stage !== 'to-size'}
        measuredHref={hrefOf({ at: 'lathe', jobId: at.job.id, cutId: at.cut.id, field: 'measured' })}
        onTouch={cutting.touchFigure}
        onTyped={cutting.type}
        onLog={(by) => void measured.commit(by)}
        onNext={cutItNext && (() => void cutItNext())}
        onHeld={held}
      />
      {isOver && <PastLimitSentence at={at} unit={unit} />}
      {at.progress.present && !isOver && <WayTaken at={at} unit={unit} />}
      {at.progress.stage !== 'to-size' && !isOver && <StepsFirst at={at} unit={unit} />}
    </div>
  );
}

type KeysProps = PartProps & { readonly aloud: ReturnType<typeof useSayAloud> };

/** The keys under the thumb; what is said stands above them, and together with them in view. */
function KeysAndNote({ at, measured, cutting, aloud }: KeysProps) {
  const give = useGiveSize(at, measured.unit);
  const isTold = measured.message !== undefined || cutting.note !== '';
  const told = useRef<HTMLDivElement>(null);
  useEffect(() => told.current?.scrollIntoView({ block: 'end' }), [isTold]);
  const sayAloud = (isOn: boolean) => {
    aloud?.change(isOn);
    if (isOn) speak(saidAloud(at, measured.unit));
  };
  return (
    <div class="at-the-lathe-keys" {...(isTold && { ref: told })}>
      {isTold && (
        <div class="at-the-lathe-note">
          {measured.message ? (
            <Message measured={measured} message={measured.message} />
          ) : (
            <p>{cutting.note}</p>
          )}
        </div>
      )}
      <LatheKeys
        jobId={at.job.id}
        cutId={at.cut.id}
        isToSize={at.progress.stage === 'to-size'}
        onGive={give && (() => void give().then((why) => why !== undefined && cutting.tell(why)))}
        {...(cutting.cutItNext && { next: { isLit: cutting.isLit, onPress: cutting.cutItByFinger } })}
        aloud={aloud && { isOn: aloud.isOn, change: sayAloud }}
      />
    </div>
  );
}

type CautionsProps = { readonly at: LatheCut; readonly unit: ShownUnit };

/** What to mind, whatever is cut; then what this plan and this speed ask for. */
function Cautions({ at, unit }: CautionsProps) {
  const { cut, progress, speed } = at;
  const { plan } = progress;
  const sentences = [
    ...threadingWords(cut, unit),
    ...latheCautions({ operation: cut.operation }),
    sayStrengthOfCut(cut),
    warmWords(at, unit),
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

/** What a part warm from the cut is measured over by; empty where it doesn't matter. */
function warmWords({ cut, progress, material }: LatheCut, unit: ShownUnit): string {
  if (progress.stage === 'over' || hasItsOwnSize(cut)) return '';
  const limits = { lower: cut.lower.exact, upper: cut.upper.exact };
  const over = warmFromCut({ size: cut.target.exact, limits, material });
  return sayWarmFromCut(over, unit, material !== undefined);
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
