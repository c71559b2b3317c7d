import { marked } from '../../length/decimal-text.ts';
import { cutSpeed } from '../../cut/cut-speed.ts';
import { speedFigure } from '../../cut/say-cuts-speed.ts';
import { sayDialFigure } from '../../cut/say-cuts.ts';
import { limitFigure, sayLimits } from '../../fit/say-fit.ts';
import { isZero } from '../../length/length.ts';
import { figure, figureBetween, show, showLimits, type ShownUnit } from '../../length/show.ts';
import { usualNutHeight } from '../../thread/grip-ends.ts';
import type { Block, LeadBlock, RowsBlock } from '../account.ts';
import type { Answered } from '../worksheet.ts';
import { offOutside, THREAD_CUTS, threadCutName } from './cuts-of-thread.ts';
import type { ThreadCutFields } from './fields.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';
import { whyOfThreadCut } from './why-of-thread-cut.ts';

type ThreadAnswered = Answered<ThreadCutFields, ThreadCutQuestion, ThreadCutAnswer>;

/** What is said of a thread to be cut: what it is turned to, how it is fed in, and what it reads over the wires. */
export function threadCutAccount({ question, answer, unit }: ThreadAnswered): readonly (Block | undefined)[] {
  return [
    ...leadsOf(question, answer, unit),
    wireRows(answer, unit),
    studRows(question, answer, unit),
    ...saidOf(question, answer, unit).map((sentence): Block => ({ is: 'said', sentence })),
    { is: 'caution', of: 'lathe' },
    threadRows(question, answer, unit),
    passRows(answer, unit),
    { is: 'why', lines: whyOfThreadCut(question, answer, unit) },
  ];
}

/** The next cut first; a stud's length stands among its rows. */
function leadsOf(q: ThreadCutQuestion, answer: ThreadCutAnswer, unit: ShownUnit): readonly LeadBlock[] {
  const { outside, overWires, isTurned, stud, wire } = answer;
  const over: LeadBlock = {
    is: 'lead',
    label: `Over ${show(wire.size, unit)} wires, to`,
    figure: figureBetween(overWires.target, overWires.lower, overWires.upper, unit),
    unit,
    limits: `${showLimits(overWires.lower, overWires.upper, unit)} is class ${answer.limits.fitClass}`,
    cut: threadCutName(stud),
  };
  if (isTurned) return [over];
  const off = offOutside(q, answer);
  return [
    {
      is: 'lead',
      label: 'Turn the outside to',
      figure: figureBetween(outside.target, outside.lower, outside.upper, unit),
      unit,
      limits: `${sayLimits(outside, unit)}${isZero(off) ? '' : `, ${show(off, unit)} to come off`}`,
      cut: stud ? THREAD_CUTS.studOutside : THREAD_CUTS.outside,
    },
    over,
  ];
}

/** The wires on hand first, then those that are offered. */
function wireRows({ offered, wire, overWires, limits }: ThreadCutAnswer, unit: ShownUnit): RowsBlock {
  const onHand = { what: `On hand, ${limitFigure(wire.size, unit)}`, figure: sayLimits(overWires, unit) };
  return {
    is: 'rows',
    title: `Over three wires, class ${limits.fitClass}`,
    leads: true,
    rows: [
      ...(wire.isBest ? [] : [onHand]),
      ...offered.map(({ size, drill, lower, upper }) => ({
        what: `${drill === undefined ? 'Best wire' : `Drill ${drill}`}, ${limitFigure(size, unit)}`,
        figure: sayLimits({ lower, upper }, unit),
      })),
    ],
  };
}

function studRows(q: ThreadCutQuestion, { stud }: ThreadCutAnswer, unit: ShownUnit): RowsBlock | undefined {
  if (!stud) return undefined;
  const nut = q.stud?.nutHeight ? '' : `, nut ${show(usualNutHeight(q.thread), unit)} as usual`;
  return {
    is: 'rows',
    title: 'Stud from bar',
    leads: true,
    rows: [
      {
        what: 'Over all',
        figure: `${figure(stud.lower, unit)} to ${show(stud.upper, unit)}`,
        more: `grip and both ends${nut}`,
      },
      { what: 'Thread for the nut', figure: show(stud.nutEnd, unit), more: 'from the end to its run-out' },
      {
        what: stud.inPart ? 'Thread for the part' : 'Thread at the other end',
        figure: show(stud.otherEnd, unit),
        more: 'from the end to its run-out',
      },
      stud.plain
        ? { what: 'Plain between them', figure: show(stud.plain, unit) }
        : { what: 'Plain between them', figure: 'none', more: 'thread it all along' },
    ],
  };
}

/** Five at most: what a hand does at the lathe. */
function saidOf(
  { infeed, hand, thread }: ThreadCutQuestion,
  { room, passes }: ThreadCutAnswer,
  unit: ShownUnit,
): readonly string[] {
  return [
    infeed === 'flank'
      ? `Compound ${marked('29.5')}° off square, its handle toward ${hand === 'right' ? 'the tailstock' : 'the chuck'}.`
      : 'Straight in by the cross slide.',
    hand === 'right'
      ? `Right hand: start ${show(room.start, unit)} clear of the end, travel toward the chuck.`
      : 'Left hand: start in the run-out groove, travel away from the chuck.',
    `Run-out groove ${show(room.runOut, unit)} wide, turned to ${show(room.groove, unit)}.`,
    `${passes.length} passes, then two spring passes before you measure.`,
    `Lead ${show(thread.pitch, unit)} a turn: set the gears first.`,
  ];
}

function threadRows(q: ThreadCutQuestion, answer: ThreadCutAnswer, unit: ShownUnit): RowsBlock {
  const { depth, slideMoves, limits, nut, play, range } = answer;
  const isFlank = q.infeed === 'flank';
  const rpm = speedOf(q, answer);
  return {
    is: 'rows',
    title: 'The thread',
    rows: [
      { what: 'Depth, as the tool goes in', figure: show(depth, unit) },
      {
        what: isFlank ? 'The compound moves' : 'The cross slide moves',
        figure: show(slideMoves, unit),
        more: isFlank ? `depth over cos ${marked('29.5')}°` : `its dial reads ${q.dial.reads}`,
      },
      {
        what: 'Pitch diameter',
        figure: sayLimits({ lower: limits.pitchLeast, upper: limits.pitchMost }, unit),
      },
      {
        what: `Play in a ${nut.fitClass} nut`,
        figure: showLimits(play.least, play.most, unit),
        more: 'on the pitch diameter',
      },
      { what: 'Wires that would do', figure: showLimits(range.least, range.most, unit) },
      {
        what: 'Speed',
        figure: rpm === undefined ? 'slow' : `${rpm} rpm at most`,
        more: rpm === undefined ? 'give the metal' : 'a quarter of turning: common practice, no source',
      },
    ],
  };
}

/** Each pass with where the dial stands for it. */
function passRows({ passes }: ThreadCutAnswer, unit: ShownUnit): RowsBlock {
  return {
    is: 'rows',
    title: 'Infeed, pass by pass',
    rows: passes.map(({ dial, sizeAfter }, index) => ({
      what: `Pass ${index + 1}`,
      figure: `${sayDialFigure(dial, unit)} ${unit}`,
      more: `${show(sizeAfter, unit)} over the wires`,
    })),
  };
}

/** Whole turns a minute; nothing while the metal isn't given. */
function speedOf({ material }: ThreadCutQuestion, { outside }: ThreadCutAnswer): string | undefined {
  if (!material) return undefined;
  const speed = cutSpeed({
    material,
    cuttingTool: 'hss',
    operation: 'thread',
    pass: 'rough',
    diameters: [outside.upper],
    lathe: { speedsRpm: [] },
  });
  return speed.ok ? speedFigure(speed.value) : undefined;
}
