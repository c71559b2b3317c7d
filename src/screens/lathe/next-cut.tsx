import { lastLimit } from '../../engine/cut/cut.ts';
import {
  absolute,
  isMore,
  isNegative,
  minus,
  plus,
  ratioOf,
  sum,
  zero,
  type Length,
} from '../../engine/length/length.ts';
import { isDiameter, onDial } from '../../engine/length/metal-on.ts';
import type { PlannedPass } from '../../engine/cut/pass-plan.ts';
import { sayCutRefusal } from '../../engine/cut/say-cuts-refusal.ts';
import {
  dialWord,
  sayCutKind,
  sayDialFigure,
  sayDialReads,
  sayLeft,
  sayOnDial,
  sayStage,
} from '../../engine/cut/say-cuts.ts';
import { sayHoleStep } from '../../engine/cut/say-cuts-hole.ts';
import { sayThreadingShort } from '../../engine/cut/say-threading.ts';
import { figure, show, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import type { Cut } from '../../store/base/records.ts';
import { Button } from '../common/button.tsx';
import { setOverWords, threadingOf } from '../cuts/cut-words.ts';
import { readingFigure } from '../readings/reading-figure.ts';
import { NextPass, Setting } from './next-pass.tsx';
import { isSlideAsked, SlideChoice, SlideNote } from './slide-choice.tsx';
import { SpeedSetting } from './speed-setting.tsx';
import { TakenBar } from './taken-bar.tsx';
import { nextTake } from './use-passes.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import './next-cut.css';

type NextCutProps = {
  readonly at: LatheCut;
  readonly unit: ShownUnit;
  readonly onTakeBack: () => void;
};

/** What is done next at the machine: the setting of dial and spindle, the plan, what was cut without measuring. */
export function NextCut({ at, unit, onTakeBack }: NextCutProps) {
  const { cut, dialled } = at;
  const last = dialled.at(-1);
  const spring = springNote(at, unit);
  if (isSlideAsked(at))
    return (
      <div class="next-cut">
        <SlideChoice at={at} />
        <NextPass>
          <SpeedSetting at={at} />
        </NextPass>
      </div>
    );
  return (
    <div class="next-cut">
      <NextPass note={dialNote(at)}>
        <DialSetting at={at} unit={unit} />
        <SpeedSetting at={at} />
      </NextPass>
      <div class="next-cut-plan">
        <PlanLine at={at} unit={unit} />
        {last && (
          <Button
            label={`Take back: ${sayOnDial({ of: cut.of, dial: at.dial, take: last }, at.dialUnit)} was not cut`}
            onPress={onTakeBack}
          >
            Take back
          </Button>
        )}
      </div>
      <SlideNote at={at} />
      {spring !== '' && <p class="next-cut-spring">{spring}</p>}
    </div>
  );
}

/** What is done before the dial is set: the chuck's set-over, the steps to a hole's size. */
export function StepsFirst({ at: { cut, progress }, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { hole } = progress;
  const threading = threadingOf(cut);
  const steps = [
    ...setOverWords(cut, unit),
    ...(threading ? [sayThreadingShort(threading, cut.blank?.exact, unit)] : []),
    ...(hole?.ok ? hole.value.steps.map((step) => sayHoleStep(step, unit)) : []),
  ];
  if (steps.length === 0) return null;
  return (
    <ol class="next-cut-steps">
      {steps.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ol>
  );
}

/** What two equal light passes have taught of the tool, in one look; the cut's own screen says it at length. */
function springNote({ progress: { spring, next } }: LatheCut, unit: ShownUnit): string {
  if (!next) return '';
  if (spring.kind === 'unsteady') return 'Two equal passes came out unequal: is anything loose?';
  if (spring.kind !== 'learnt') return '';
  const by = figure(absolute(spring.springs), unit);
  return isNegative(spring.springs)
    ? `Tool takes ${by} too much: allowed for.`
    : `Tool springs ${by}: allowed for.`;
}

/** From the blank to the limits, and how far it is. */
export function WayTaken({ at, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { cut, progress, dialled } = at;
  const start = startOf(at);
  const limits = showBetween(cut.lower.exact, cut.upper.exact, unit);
  const whole = start && progress.left && distance(start, cut.target.exact);
  const unmeasured = whole && isMore(whole, zero) ? ratioOf(sum(dialled), whole) : 0;
  const present = progress.present ? `, ${show(progress.present, unit)} measured last` : '';
  return (
    <TakenBar
      share={progress.share}
      unmeasured={unmeasured}
      from={start ? figure(start, unit) : ''}
      limits={limits}
      spoken={`From ${start ? show(start, unit) : 'the blank'} to the limits ${limits} ${unit}${present}.`}
    />
  );
}

function DialSetting({ at, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { cut, dial, dialUnit, dialled, progress } = at;
  const take = nextTake(at);
  if (!take || !progress.next) return null;
  const to = progress.next.dial;
  return (
    <Setting
      label={dialWord(to)}
      figure={figure(onDial(cut.of, dial, take), dialUnit)}
      {...(dialUnit !== unit && { unit: dialUnit })}
      {...((dialled.length > 0 || to.turns > 0) && { more: `to ${sayDialFigure(to, dialUnit)}` })}
    />
  );
}

/** `zero it first · reads radius`: in the words of the screen, where a diameter is Ø. */
function dialNote(at: LatheCut): string | undefined {
  const { dialled, progress } = at;
  if (!nextTake(at) || !progress.next) return undefined;
  const reads = sayDialReads(progress.next.dial);
  return [dialled.length === 0 ? 'zero it first' : 'from the zero', reads]
    .filter((words) => words !== '')
    .join('\u00a0· ');
}

function PlanLine({ at, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { progress, dialled } = at;
  if (progress.stage === 'to-measure' && !progress.hole) return <p>{sayStage('to-measure')}.</p>;
  if (progress.hole && !progress.hole.ok) return <p>{sayCutRefusal(progress.hole.refusal, unit)}</p>;
  if (progress.hole) return null;
  if (progress.plan && !progress.plan.ok) return <p>{sayCutRefusal(progress.plan.refusal, unit)}</p>;
  if (!progress.next)
    return <p>{dialled.length > 0 ? 'Every pass is cut: measure it.' : 'Nothing left to take.'}</p>;
  if (progress.nextIsLast) return <p class="next-cut-last">{lastPass(at, progress.next, unit)}</p>;
  const { pass, coming } = sayPasses(at, unit);
  return (
    <p>
      {pass}
      <span class="next-cut-then">{`\u00a0· ${coming}`}</span>
    </p>
  );
}

/** Short enough to be read in one look, before the cut that can't be taken back. */
function lastPass({ question }: LatheCut, next: PlannedPass, unit: ShownUnit): string {
  return `Last pass: lands on ${figure(next.sizeAfter, unit)}, limit ${figure(lastLimit(question), unit)}. Check the dial.`;
}

// Chosen, not published: more than the next three passes are not kept in mind.
const MOST_SHOWN = 3;

/** `Pass 3 of 5 · then .004 · .001`, figures as the dial moves for each, with its unit where the screen's is another. */
function sayPasses(
  { cut, dial, dialUnit, progress: { made, plan, next } }: LatheCut,
  unit: ShownUnit,
): { readonly pass: string; readonly coming: string } {
  if (!plan?.ok || !next) return { pass: '', coming: '' };
  const { passes } = plan.value;
  const at = passes.indexOf(next);
  const after = passes.slice(at + 1).map(({ asked }) => figure(onDial(cut.of, dial, asked), dialUnit));
  const shown = [...after.slice(0, MOST_SHOWN), ...(after.length > MOST_SHOWN ? ['…'] : [])];
  return {
    pass: `Pass ${made + at + 1} of ${made + passes.length}`,
    coming: `then ${shown.join('\u00a0· ')}${dialUnit === unit ? '' : `\u00a0${dialUnit}`}`,
  };
}

export type MainFigure = { readonly label: string; readonly figure: string; readonly spoken: string };

/** The one number: what is left, as measured or as it should be by now; the target where no size is known. */
export function mainFigure({ cut, progress, dialled }: LatheCut, unit: ShownUnit): MainFigure {
  const on = cut.threading ? 'over wires' : isDiameter(cut.of) ? 'on Ø' : `on ${sayCutKind(cut.of)}`;
  const { left, past, present, stage } = progress;
  if (past)
    return {
      label: `past the limit ${on}`,
      figure: figure(past, unit),
      spoken: `${show(past, unit)} past the limit`,
    };
  if (stage === 'to-size' && present)
    return {
      label: `measured ${on}`,
      figure: figure(present, unit),
      spoken: `Measured ${show(present, unit)} ${on}`,
    };
  if (!left)
    return {
      label: `target ${on}`,
      figure: typedFigure(cut.target, unit),
      spoken: `Target ${show(cut.target.exact, unit)}, nothing measured yet`,
    };
  const expected = minus(left, sum(dialled));
  const isExpected = dialled.length > 0;
  const sentence = `${sayLeft(cut.of, expected, cut.threading !== undefined)}: ${show(expected, unit)}`;
  return {
    label: isExpected ? `should be left ${on}` : `left to take ${on}`,
    figure: figure(expected, unit),
    spoken: isExpected ? `If the dial cut what it was asked, ${sentence}` : sentence,
  };
}

function startOf({ cut, passes, progress }: LatheCut): Length | undefined {
  return (
    cut.blank?.exact ?? passes.find(([, pass]) => !pass.struckOut)?.[1].measured.exact ?? progress.present
  );
}

function distance(a: Length, b: Length): Length {
  const way = minus(a, b);
  return isMore(way, zero) ? way : plus(zero, minus(b, a));
}

function typedFigure(entry: Cut['target'], unit: ShownUnit): string {
  return readingFigure(entry, unit);
}
