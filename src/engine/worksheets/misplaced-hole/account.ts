import { marked } from '../../length/decimal-text.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { totalReading } from '../../cut/say-set-over.ts';
import { sayNominal } from '../../fit/nominal.ts';
import { sayLimits } from '../../fit/say-fit.ts';
import { isMore, isZero, sameLength } from '../../length/length.ts';
import { figure, figureBetween, show, showBand, showLimits, type ShownUnit } from '../../length/show.ts';
import { sayWarningShort } from '../../press/say-warning-short.ts';
import { mean } from '../../reading/estimate.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import type { Block, LeadBlock, RowsBlock, VerdictBlock } from '../account.ts';
import { pressedRows, pressItIn } from '../bushing/rows-of-bushing.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfMisplacedHole, OFF_MIDDLE } from './cuts-of-misplaced-hole.ts';
import type { MisplacedHoleFields } from './fields.ts';
import type { MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';
import { LOCK_IT, sayAtLeast, sayPlace, sayToward, sayWithinDegrees } from './say-misplaced-hole.ts';
import { waysBeside } from './ways-beside.ts';
import { whyOfMisplacedHole } from './why-of-misplaced-hole.ts';

type MisplacedAnswered = Answered<MisplacedHoleFields, MisplacedHoleQuestion, MisplacedHoleAnswer>;

/** What is said of a hole in the wrong place: whether it can be done, what it is opened to, the bushing, and the other ways. */
export function misplacedHoleAccount(worked: MisplacedAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const { press, judgedPlace, wall } = answer;
  const offers = cutsOfMisplacedHole(question, answer, given.dial).flatMap((way) => way.offers);
  return [
    ...verdictsOf(worked),
    leadOf(worked, offers),
    bushingRows(answer, offers, unit),
    twoHoleRows(answer, unit),
    proofOf(judgedPlace, given),
    wall.verdict.kind === 'too-close' ? { is: 'proof', sentence: READ_THE_WALL } : undefined,
    ...saidOf(worked).map((sentence): Block => ({ is: 'said', sentence })),
    { is: 'line', label: 'off by', ...judgedPlace, verdict: judgedPlace.verdict.kind },
    { is: 'line', label: 'wall left', ...wall, verdict: wall.verdict.kind },
    { is: 'caution', of: 'bushing' },
    ...waysBeside(question, answer, unit),
    { ...pressItIn(press, unit), leads: undefined },
    pressedRows(press, unit),
    { is: 'why', lines: whyOfMisplacedHole(question, answer, unit) },
  ];
}

const READ_THE_WALL = 'Read the wall again with a finer tool before you cut.';

const WORST_FIRST: readonly VerdictBlock['kind'][] = ['no-good', 'too-close', 'good'];

/** The worst first: what must stop it, the wall, the place, then the grip as it was measured. */
function verdictsOf({ answer, unit }: MisplacedAnswered): readonly VerdictBlock[] {
  const { press, wall, judgedPlace } = answer;
  const verdict = (kind: VerdictBlock['kind'], headline: string): VerdictBlock => ({
    is: 'verdict',
    kind,
    headline,
  });
  const { measured } = press;
  return [
    ...press.warnings
      .filter(({ weighs }) => weighs === 'stop')
      .map((warning) => verdict('no-good', sayWarningShort(warning, unit))),
    verdict(judgedPlace.verdict.kind, sayPlace(answer, unit)),
    verdict(wall.verdict.kind, sayVerdict(wall.verdict, { ...wall, quantity: 'wall left', unit })),
    ...(measured
      ? [
          verdict(
            measured.verdict.kind,
            sayVerdict(measured.verdict, { ...measured, quantity: 'interference', unit }),
          ),
        ]
      : []),
  ].toSorted((a, b) => WORST_FIRST.indexOf(a.kind) - WORST_FIRST.indexOf(b.kind));
}

/** The next cut. */
function leadOf({ question, answer, unit }: MisplacedAnswered, offers: readonly CutOffer[]): LeadBlock {
  const { press, least, off } = answer;
  const { next, ream, reamTakes, turn, turnTo, inside, insideTo, measured } = press;
  const cut = (is: (offer: CutOffer) => boolean) => offers.find(is)?.name;
  if (measured?.verdict.kind === 'no-good' || next === 'turn')
    return {
      is: 'lead',
      label:
        measured?.verdict.kind === 'no-good' && measured.verdict.way === 'under'
          ? 'Turn a new one to'
          : 'Turn the bushing to',
      figure: figureBetween(turnTo, turn.lower, turn.upper, unit),
      unit,
      limits: sayLimits(turn, unit),
      cut: cut(({ of }) => of === 'outside'),
    };
  if (next === 'ream')
    return {
      is: 'lead',
      label: question.inRightPlace ? 'In its right place, bore to' : 'Where it is, open it to',
      figure: figure(ream.size, unit),
      unit,
      ...(ream.name !== '' && { change: `${ream.name} reamer` }),
      limits: `at least ${sayAtLeast(least, unit)}, takes ${show(reamTakes, unit)}`,
      cut: cut(({ part, target }) => part === 'bore' && sameLength(target, ream.size)),
    };
  const inChuck = offers.find(({ name }) => name === OFF_MIDDLE);
  return off && inChuck
    ? {
        is: 'lead',
        label: 'Set it over, then bore to',
        figure: figure(inChuck.target, unit),
        unit,
        limits: `indicator reads ${show(totalReading(off.by), unit)} over a turn`,
        cut: inChuck.name,
      }
    : {
        is: 'lead',
        label: 'Press it, then bore to',
        figure: figureBetween(insideTo, inside.lower, inside.upper, unit),
        unit,
        limits: sayLimits(inside, unit),
        cut: cut(({ part, of }) => part === 'bushing' && of === 'bore'),
      };
}

function bushingRows(answer: MisplacedHoleAnswer, offers: readonly CutOffer[], unit: ShownUnit): RowsBlock {
  const { off, thin, thick, place, press } = answer;
  const turned = offers.find(({ of }) => of === 'outside');
  const bored = offers.find(
    ({ name, part, of }) => part === 'bushing' && of === 'bore' && name !== OFF_MIDDLE,
  );
  return {
    is: 'rows',
    title: off ? 'Offset bushing' : 'Plain bushing',
    leads: true,
    rows: [
      ...(off
        ? [
            {
              what: 'Set over',
              figure: figure(off.by, unit),
              more: `reads ${show(totalReading(off.by), unit)} over a turn`,
            },
            {
              what: 'Toward',
              figure: sayToward(place.towardDegrees),
              more: `${sayWithinDegrees(off.degrees)}, thin side that way`,
            },
            { what: 'Thin side', figure: showLimits(thin.lower, thin.upper, unit) },
            { what: 'Thick side', figure: showLimits(thick.lower, thick.upper, unit) },
          ]
        : [{ what: 'Its wall', figure: showLimits(thin.lower, thin.upper, unit) }]),
      {
        what: 'Outside',
        figure: figureBetween(press.turnTo, press.turn.lower, press.turn.upper, unit),
        more: sayLimits(press.turn, unit),
        cut: turned?.name,
      },
      {
        what: 'Bore, once it is in',
        figure: figureBetween(press.insideTo, press.inside.lower, press.inside.upper, unit),
        more: sayLimits(press.inside, unit),
        cut: bored?.name,
      },
    ],
  };
}

function twoHoleRows({ place: { twoHoles } }: MisplacedHoleAnswer, unit: ShownUnit): RowsBlock | undefined {
  if (!twoHoles) return undefined;
  const { before, after, halfWidth } = twoHoles;
  const turned = Math.round((((after.degrees - before.degrees + 540) % 360) - 180) * 100) / 100;
  return {
    is: 'rows',
    title: 'Both holes',
    leads: true,
    rows: [
      {
        what: 'Middle to middle',
        figure: `${figure(before.apart, unit)} → ${figure(after.apart, unit)}`,
        more: isZero(halfWidth) ? undefined : `known to ${showBand(halfWidth, unit)}`,
      },
      ...(turned === 0
        ? []
        : [
            {
              what: 'Their line turns',
              figure: `${marked(Math.abs(turned))}°`,
              more: turned > 0 ? 'counterclockwise' : 'clockwise',
            },
          ]),
    ],
  };
}

const TOO_LITTLE_WALL = 'Build the boss up, or bore it in its right place.';

function saidOf({ question, answer: { off, press, wall }, unit }: MisplacedAnswered): readonly string[] {
  const { bore, pin } = question.bushed;
  const isThicker = isMore(mean(pin.tightest), mean(bore.tightest));
  return [
    ...(isThicker ? ['The pin is thicker than the hole is now: check both.'] : []),
    ...(wall.verdict.kind === 'no-good' ? [TOO_LITTLE_WALL] : []),
    ...(off ? [LOCK_IT] : []),
    ...press.warnings
      .filter(({ weighs }) => weighs === 'mind')
      .map((warning) => sayWarningShort(warning, unit)),
    sayNominal(press.nominal, unit),
  ];
}
