import { marked } from '../../length/decimal-text.ts';
import { sayInsertAxis } from '../../fit/worn-axis.ts';
import { decimalText } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import type { Drill } from '../../thread/drill-series.ts';
import { STI_CAUTION, tapName } from '../../thread/tap-name.ts';
import type { AskBlock, Block, LeadBlock, RowsBlock, SaidBlock } from '../account.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfInsert, insertAxis } from './cuts-of-insert.ts';
import type { InsertFields } from './fields.ts';
import type { InsertLeg, LeggedAnswer, LeggedQuestion } from './insert-in-legs.ts';
import { sayDrillSize, sayPercent } from './say-insert.ts';
import { wallNeeded } from './thread-insert.ts';
import { insertVerdicts, judgedHole } from './verdict-of-insert.ts';
import { waysOfInsert } from './ways-of-insert.ts';
import { insertWhy } from './why-of-insert.ts';

export type InsertAnswered = Answered<InsertFields, LeggedQuestion, LeggedAnswer>;

/** What is said of an insert: the drill or none, what is bought for each leg, the wall that has to be given first. */
export function insertAccount(worked: InsertAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const judged = judgedHole(question, answer);
  const isCut = answer.hole.state === 'run-drill-through-anyway';
  return [
    ...insertVerdicts(judged, answer, unit),
    leadOfInsert(worked),
    insertsToBuy(answer, unit),
    ...answer.legs.flatMap((leg, index) => blindRows(leg, legName(answer, index), unit)),
    askForWall(worked),
    judged && isCut ? proofOf(judged, given) : undefined,
    { is: 'said', sentence: STI_CAUTION },
    ...sayAxis(question, unit),
    {
      is: 'said',
      on: 'paper',
      sentence: `${question.thread.designation.replace('x', ' × ')} in ${question.metal}.`,
    },
    judged && { is: 'line', label: 'hole', ...judged, verdict: judged.verdict.kind },
    { is: 'caution', of: 'insert' },
    ...waysOfInsert(answer, unit),
    ...lengthRows(answer, unit),
    { is: 'why', lines: insertWhy(worked) },
  ];
}

/** ", leg 2" where there are several. */
export function legName({ legs }: Pick<LeggedAnswer, 'legs'>, index: number): string {
  return legs.length > 1 ? `, leg ${index + 1}` : '';
}

function leadOfInsert(worked: InsertAnswered): LeadBlock {
  const { question, answer, unit } = worked;
  const { hole, drill } = answer;
  const thread = question.thread.designation.replace('x', ' × ');
  if (hole.state === 'straight-to-tap')
    return {
      is: 'lead',
      label: 'No drill: straight to the',
      figure: 'STI tap',
      unit: thread,
      limits: `${sayPercent(hole.percent ?? 0)} of thread at the loosest place`,
    };
  if (hole.state === 'over')
    return {
      is: 'lead',
      label: 'Hole over size',
      figure: sayPercent(hole.percent ?? 0),
      unit: 'of thread',
      limits: hole.drillTightest
        ? `At its tightest run ${sayDrillSize(drill.drill)} through.`
        : `If that will do: ${tapName(question.thread.designation, 'insert')}.`,
    };
  const cut = cutsOfInsert(question, answer)
    .flatMap(({ offers }) => offers)
    .find((offer) => offer.drill !== undefined);
  return {
    is: 'lead',
    label: drillLabel(worked),
    figure: drill.drill.name,
    unit: drill.drill.series === 'fraction' ? 'in' : '',
    change: decimalsOf(drill.drill, unit),
    limits: `then STI tap ${thread} · ${sayPercent(hole.percentAfterDrill ?? drill.percent)}`,
    ...(cut && { cut: cut.name }),
  };
}

/** That it goes where the hole is stands with the drill itself, in sight whatever else is said. */
function drillLabel({ question, answer }: InsertAnswered): string {
  const deed = answer.hole.state === 'run-drill-through-anyway' ? 'Run through anyway' : 'Drill';
  const { hole, thread } = question;
  return hole && insertAxis(thread, hole.loosest) ? `${deed}, where the hole is` : deed;
}

/** What the drill measures, the shop's own unit first: `.4531 in · 11.509 mm`. */
function decimalsOf({ size, series }: Drill, unit: ShownUnit): string | undefined {
  const inch = show(size, 'in');
  if (series === 'metric') return unit === 'in' ? inch : undefined;
  const metric = `${marked(decimalText(size, 'mm', 3))} mm`;
  return unit === 'in' ? `${inch} · ${metric}` : `${metric} · ${inch}`;
}

function insertsToBuy(answer: LeggedAnswer, unit: ShownUnit): RowsBlock {
  const { legs, setDown } = answer;
  return {
    is: 'rows',
    title: legs.length > 1 ? 'Inserts, one a leg' : 'Insert',
    leads: true,
    rows: [
      ...legs.map((leg, index) => ({
        what: metalOf(leg, legs.length > 1 ? `Leg ${index + 1}` : 'Metal'),
        figure: `${leg.chosen.times} · ${show(leg.chosen.nominal, unit)}`,
        more: leg.thickness ? sayTrim(leg, unit) : 'the usual length; give the metal’s thickness',
      })),
      {
        what: 'Below the face',
        figure: `${figure(setDown.least, unit)} to ${show(setDown.most, unit)}`,
      },
    ],
  };
}

// How thick it is stands in the drawing and among the sizes.
function metalOf({ thickness }: InsertLeg, name: string): string {
  return thickness ? name : `${name}, not measured`;
}

function sayTrim({ chosen: { trimOff } }: InsertLeg, unit: ShownUnit): string {
  return trimOff ? `trim or grind ${show(trimOff, unit)} off` : 'nothing to trim';
}

function blindRows({ blindDepth }: InsertLeg, where: string, unit: ShownUnit): readonly RowsBlock[] {
  if (!blindDepth) return [];
  const { drilling, point, fullThread, floor, leastFloor } = blindDepth;
  return [
    {
      is: 'rows',
      title: `Blind hole${where}`,
      leads: true,
      rows: [
        {
          what: 'Drill deep',
          figure: show(drilling, unit),
          more: `full diameter; the point ${show(point, unit)} deeper`,
        },
        { what: 'Full thread', figure: show(fullThread, unit) },
        ...(floor
          ? [{ what: 'Metal under it', figure: show(floor, unit), more: `${show(leastFloor, unit)} wanted` }]
          : []),
      ],
    },
  ];
}

/** One thing first, before there is a larger hole: how much metal stands beside it. */
function askForWall({ question, answer, given, unit }: InsertAnswered): AskBlock | undefined {
  if (question.wall || given.choice('wallIs') === 'far') return undefined;
  const needed = show(wallNeeded(question, answer.limits), unit);
  return question.hole
    ? {
        is: 'ask',
        sentence: `how much wall at its thinnest? The tap needs ${needed} there now.`,
        field: 'wall',
        key: 'Give the wall',
      }
    : {
        is: 'ask',
        sentence: `how far from the hole’s centre to the edge? It needs ${needed}.`,
        field: 'centreToEdge',
        key: 'Give the edge',
      };
}

function sayAxis({ hole, thread }: LeggedQuestion, unit: ShownUnit): readonly SaidBlock[] {
  const axis = hole && insertAxis(thread, hole.loosest);
  return axis ? [{ is: 'said', sentence: sayInsertAxis(axis, unit) }] : [];
}

function lengthRows(answer: LeggedAnswer, unit: ShownUnit): readonly RowsBlock[] {
  return answer.legs.map(({ lengths }, index) => ({
    is: 'rows',
    title: `Lengths${legName(answer, index)}`,
    rows: lengths.map(({ times, nominal, chosen, trimOff, installedLeast, installedMost }) => ({
      what: `${times}${chosen ? ', this one' : ''}`,
      figure: show(nominal, unit),
      more: [
        `${figure(installedLeast, unit)} to ${figure(installedMost, unit)} when it is in`,
        ...(trimOff ? [`${show(trimOff, unit)} longer than the metal`] : []),
      ].join('; '),
    })),
  }));
}
