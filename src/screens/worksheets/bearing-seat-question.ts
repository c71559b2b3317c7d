import type {
  SeatQuestion,
  SettingWant,
  SleeveQuestion,
  TaperQuestion,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import type { Estimate } from '../../engine/reading/estimate.ts';
import { largest, minus, negate, plus, smallest, zero, type Length } from '../../engine/length/length.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import { legOf, type Leg } from '../../engine/reading/settle.ts';
import { usualSleeveExcess } from '../../engine/worksheets/bearing-seat/tables/bearing-practice.ts';
import { middleOf } from '../../engine/reading/verdict.ts';
import { threadNamed } from '../../engine/thread/threads.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

/** What a bearing worksheet asks the engine, by what was chosen; undefined while something is missing. */
export type BearingQuestion =
  | { readonly kind: 'ball'; readonly ask: SleeveQuestion }
  | { readonly kind: 'taper'; readonly ask: TaperQuestion }
  | { readonly kind: 'seat'; readonly ask: SeatQuestion };

export function bearingQuestion(data: WorksheetData): BearingQuestion | undefined {
  switch (data.worksheet.choices['bearing']) {
    case 'ball':
      return sleeveQuestion(data);
    case 'taper':
      return taperQuestion(data);
    case 'seat':
      return seatQuestion(data);
    default:
      return undefined;
  }
}

/** By how much the sleeve should be longer: the usual, or one's own. */
export function sleeveWant(data: WorksheetData): SettingWant {
  const usual = usualSleeveExcess[data.unit];
  const { lower, upper, aim } = limitsGiven(data);
  if (!lower && !upper) return aim ? { ...usual, aim } : usual;
  const room = minus(usual.limits.upper, usual.limits.lower);
  const limits = {
    lower: lower ?? smallest(usual.limits.lower, upper ?? zero),
    upper: upper ?? largest(usual.limits.upper, plus(lower ?? zero, room)),
    source: 'your own limits',
  };
  return { limits, aim: aim ?? middleOf(limits) };
}

/** The sizes an answer is made of, for asking which tools would settle it. */
export function bearingLegs(question: BearingQuestion): readonly Leg[] {
  switch (question.kind) {
    case 'ball': {
      const { sleeve, between, direct } = question.ask;
      if (direct) return [legOf('depth', direct, 1)];
      return [...(sleeve ? [legOf('length', sleeve, 1)] : []), legOf('length', between, -1)];
    }
    case 'taper':
      return [legOf('gap', question.ask.endPlay, 1)];
    case 'seat':
      if (question.ask.direct) return [legOf('depth', question.ask.direct, 1)];
      return [
        ...question.ask.goesIn.map(({ size, count }) => legOf('length', size, count)),
        legOf('depth', question.ask.depth, -1),
      ];
    default:
      return question satisfies never;
  }
}

function sleeveQuestion(data: WorksheetData): BearingQuestion | undefined {
  const { sizes } = data.worksheet;
  const [between, sleeve, direct] = ['between', 'sleeve', 'direct'].map((name) =>
    knownSize(data, sizes[name]),
  );
  if (!between) return undefined;
  const ask = {
    want: sleeveWant(data),
    step: lengthStep(data),
    // The shortest of several places lets the races come closest together; of the distance the longest does.
    between: between.most,
    ...(sleeve && { sleeve: sleeve.least }),
    ...(direct && { direct: direct.least }),
    longest: {
      between: between.least,
      ...(sleeve && { sleeve: sleeve.most }),
      ...(direct && { direct: direct.most }),
    },
  };
  return { kind: 'ball', ask };
}

function taperQuestion(data: WorksheetData): BearingQuestion | undefined {
  const { sizes, choices } = data.worksheet;
  const endPlay = knownSize(data, sizes['endPlay']);
  const want = ownWant(data, 'the maker’s figure, as you typed it');
  const { setBy } = choices;
  if (!endPlay || !want || (setBy !== 'nut' && setBy !== 'shim-between' && setBy !== 'shim-behind'))
    return undefined;
  const shim = knownSize(data, sizes['shim'])?.tightest;
  const pitch = choices['thread'] === undefined ? undefined : threadNamed(choices['thread'])?.pitch;
  const read = { endPlay: endPlay.least, endPlayMost: endPlay.most };
  return { kind: 'taper', ask: { ...read, want, setBy, ...(shim && { shim }), ...(pitch && { pitch }) } };
}

function seatQuestion(data: WorksheetData): BearingQuestion | undefined {
  const { sizes } = data.worksheet;
  const [depth, width, alsoIn] = ['depth', 'width', 'alsoIn'].map((name) => knownSize(data, sizes[name]));
  if (!depth || !width) return undefined;
  const want = ownWant(data, 'your own limits');
  const direct = readProud(data);
  const inIt = (place: 'least' | 'most') =>
    [width, alsoIn].flatMap((known) => (known ? [{ size: known[place], count: 1 }] : []));
  return {
    kind: 'seat',
    ask: {
      // Where the recess is shallowest and what goes in is thickest it stands proudest.
      depth: depth.least,
      goesIn: inIt('most'),
      ...(direct && { direct: direct.most }),
      leastProud: {
        depth: depth.most,
        goesIn: inIt('least'),
        ...(direct && { direct: direct.least }),
      },
      step: lengthStep(data),
      ...(want && { want }),
    },
  };
}

/** How far it stands proud, as read, least and most; what was read below the face is less than none. */
function readProud(data: WorksheetData): { readonly least: Estimate; readonly most: Estimate } | undefined {
  const { sizes } = data.worksheet;
  const proud = knownSize(data, sizes['directProud']);
  const below = knownSize(data, sizes['directBelow']);
  if (proud) return proud;
  const under = (read: Estimate): Estimate => ({ ...read, sum: negate(read.sum) });
  return below && { least: under(below.most), most: under(below.least) };
}

function ownWant(data: WorksheetData, source: string): SettingWant | undefined {
  const { lower, upper, aim } = limitsGiven(data);
  return lower && upper
    ? { limits: { lower, upper, source }, aim: aim ?? middleOf({ lower, upper }) }
    : undefined;
}

function limitsGiven(data: WorksheetData) {
  const { sizes } = data.worksheet;
  return {
    lower: exactSize(data, sizes['lower']),
    upper: exactSize(data, sizes['upper']),
    aim: exactSize(data, sizes['aim']),
  };
}

function lengthStep({ dial }: WorksheetData): Length {
  return sizeStep('length', { reads: dial.reads, graduation: dial.graduation.exact });
}
