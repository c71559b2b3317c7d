import type { CutProgress, CutProof, CutStage } from './cut-progress.ts';
import { lastLimit, type CutSizes } from './cut.ts';
import type { DialSetting, LatheDial, Slide } from './dial.ts';
import { absolute, isLess, isNegative, isZero, type Length } from '../length/length.ts';
import { isDiameter, onDial, type CutKind } from '../length/metal-on.ts';
import type { PassPlan } from './pass-plan.ts';
import { saySettler, sayVerdict } from '../reading/say-verdict.ts';
import { withUnit, figure, show, showBand, type ShownUnit } from '../length/show.ts';
import { showBeside } from '../length/show-limits.ts';
import type { Spring } from './spring.ts';

const SIZES: Readonly<Record<CutKind, string>> = {
  outside: 'outside',
  bore: 'bore',
  'tap-drill': 'hole',
  length: 'length',
  'recess-depth': 'depth',
  'slot-depth': 'depth',
  'slot-width': 'width',
};

const HEADLINES: Readonly<Record<CutStage, string>> = {
  'to-measure': 'Measure it first',
  'to-cut': 'To cut',
  cutting: 'Cutting',
  'last-pass': 'Last pass next',
  'to-size': 'To size',
  over: 'Past the limit',
};

/** Where the cut stands, in a word or three. */
export function sayStage(stage: CutStage): string {
  return HEADLINES[stage];
}

/** What a cut's size is called: outside, bore, length, depth. */
export function sayCutKind(of: CutKind): string {
  return SIZES[of];
}

/** What the big figure is: `left to take, on diameter`; below zero the target is passed. */
export function sayLeft(of: CutKind, left: Length, overWires = false): string {
  const on = overWires ? 'over the wires' : isDiameter(of) ? 'on diameter' : `on ${SIZES[of]}`;
  return isNegative(left) ? `past the target, ${on}` : `left to take, ${on}`;
}

/** What the dial shows, with its turns: `.018`, `1 turn + .018`. */
export function sayDialFigure({ turns, figure: shown }: DialSetting, unit: ShownUnit): string {
  const text = figure(shown, unit);
  return turns === 0 ? text : `${turns === 1 ? '1 turn' : `${turns} turns`} + ${text}`;
}

/** What is done with the dial for a cut, the one word for screen and voice: `dial in`, `dial out`, `feed in`. */
export function dialWord({ direction }: Pick<DialSetting, 'direction'>): string {
  if (direction === 'in') return 'dial in';
  return direction === 'out' ? 'dial out' : 'feed in';
}

const SLIDES: Readonly<Record<Slide, string>> = {
  cross: 'cross slide',
  compound: 'compound',
  'lead-screw': 'lead-screw handwheel',
};

/** A slide as it is called beside the lathe. */
export function saySlide(slide: Slide): string {
  return SLIDES[slide];
}

/** What a pass moves the dial by, as it is counted: `.018 in on radius` for .036 off a diameter. */
export function sayOnDial(
  { of, dial, take }: { readonly of: CutKind; readonly dial: LatheDial; readonly take: Length },
  unit: ShownUnit,
): string {
  const onRadius = dial.reads === 'radius' && isDiameter(of) ? ' on radius' : '';
  return `${show(onDial(of, dial, take), unit)}${onRadius}`;
}

/** Which dial it is, and what its figure is of: `reads radius`, `compound`. Nothing where there is nothing to mistake. */
export function sayDialReads({ reads, slide }: Pick<DialSetting, 'reads' | 'slide'>): string {
  if (reads !== undefined) return `reads ${reads === 'radius' ? 'radius' : 'Ø'}`;
  return slide === undefined || slide === 'to-choose' ? '' : saySlide(slide);
}

/** The light passes of a plan, in a sentence; nothing where there is nothing to be said. */
export function sayPlanNote({ passes, proud, short, correction }: PassPlan, unit: ShownUnit): string {
  const rubs = passes.find((pass) => pass.rubs);
  return [
    ...(rubs
      ? [
          `A pass of ${show(rubs.asked, unit)} is less than this metal wants: it may rub and harden. Keep the tool sharp and the feed up.`,
        ]
      : []),
    ...(short ? [sayShort(short, unit)] : []),
    ...(passes.length > 0 && !short && !isZero(proud) ? [sayProud(proud, unit)] : []),
    ...(isZero(correction) ? [] : [`The last pass asks ${sayMoreOrLess(correction, unit)} for the spring.`]),
  ].join(' ');
}

function sayShort(short: Length, unit: ShownUnit): string {
  return `As the tool cuts it ends ${show(short, unit)} short of the limits, and no more can be asked for. Go over it again without feed, then measure.`;
}

function sayProud(proud: Length, unit: ShownUnit): string {
  return isNegative(proud)
    ? `No mark of the dial lands on the target: it ends ${show(absolute(proud), unit)} past it, inside the limits.`
    : `It ends ${show(proud, unit)} proud of the target, which is as near as the dial comes with metal left on.`;
}

function sayMoreOrLess(correction: Length, unit: ShownUnit): string {
  return `${show(absolute(correction), unit)} ${isNegative(correction) ? 'less' : 'more'}`;
}

/** Past the limit, loud and at once: what was measured, by how much, and to stop. */
export function sayOver(cut: CutSizes, { present, past, proof }: CutProgress, unit: ShownUnit): string {
  if (!present || !past) return '';
  const limit = lastLimit(cut);
  const shown = showBeside(present, { limit, is: isLess(present, limit) ? 'least' : 'most' }, unit);
  const said = `Stop. ${shown.value} is ${shown.by} past the limit of ${shown.limit}.`;
  return proof?.verdict.kind === 'too-close'
    ? `${said} The tool knows it only to ${withUnit(showBand(proof.band.halfWidth, unit), unit)}: measure again before anything else.`
    : `${said} No cut puts metal back; the ways out are below.`;
}

const ONE_WAY: Readonly<Record<CutKind, string>> = {
  outside: 'An outside only gets smaller',
  bore: 'A bore only gets larger',
  'tap-drill': 'A hole only gets larger',
  length: 'A length only gets shorter',
  'recess-depth': 'A recess only gets deeper',
  'slot-depth': 'A slot only gets deeper',
  'slot-width': 'A slot only gets wider',
};

/** Two measurements between which metal came back: one of them is wrong. */
export function sayGrownBack(
  of: CutKind,
  { before, now }: { readonly before: Length; readonly now: Length },
  unit: ShownUnit,
): string {
  return `${ONE_WAY[of]}: ${show(before, unit)} before, ${show(now, unit)} now. Which is wrong?`;
}

/** What the last measurement proves, and what would settle it. */
export function sayProof(of: CutKind, proof: CutProof, unit: ShownUnit): string {
  const sentence = sayVerdict(proof.verdict, {
    quantity: SIZES[of],
    unit,
    limits: proof.limits,
    value: proof.value,
    halfWidth: proof.band.halfWidth,
  });
  const tool = proof.toolKnown ? '' : ' No measuring tool is named, so the size is taken as exact.';
  return proof.verdict.kind === 'too-close'
    ? `${sentence} ${saySettler(proof.settler, unit)}${tool}`
    : `${sentence}${tool}`;
}

/** What is known of the tool's spring, and why nothing is where nothing is. */
export function saySpring(spring: Spring, unit: ShownUnit): string {
  switch (spring.kind) {
    case 'learnt':
      return isNegative(spring.springs)
        ? `The tool takes ${show(absolute(spring.springs), unit)} more than it is asked (${showBand(spring.halfWidth, unit)}), from two equal light passes. The next plan asks for less.`
        : `The tool springs ${show(spring.springs, unit)} (${showBand(spring.halfWidth, unit)}), from two equal light passes. The last pass asks for that much more, never past the limit.`;
    case 'inside-band':
      return `Asked and got differ by ${show(absolute(spring.difference), unit)}, which is inside the measuring tool's band of ${withUnit(showBand(spring.halfWidth, unit), unit)}: nothing is corrected.`;
    case 'unsteady':
      return `Two equal light passes came out ${show(spring.first, unit)} and ${show(spring.second, unit)} short of what was asked. That is not steady, so nothing is corrected: is anything loose, or the edge dull?`;
    case 'not-learnt':
      return spring.why === 'no-measuring-tool'
        ? 'No measuring tool is named for the last passes, so what the tool springs is not known.'
        : 'What the tool springs is learnt once two equal light passes are measured.';
    default:
      return spring satisfies never;
  }
}
