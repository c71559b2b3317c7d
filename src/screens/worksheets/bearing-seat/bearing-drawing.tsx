import { mean } from '../../../engine/reading/estimate.ts';
import { isNegative, isZero, type Length } from '../../../engine/length/length.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import { sayLimits } from '../../../engine/fit/say-fit.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { sayPlay, saySeat } from '../../../engine/worksheets/bearing-seat/say-bearing-seat.ts';
import { bearingSeatWorksheet } from '../../../engine/worksheets/bearing-seat/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { RingSection, SeatSection, sectionIn, SleeveSection, TaperSection } from './bearing-sections.tsx';

/** The bearings of the question that was chosen, cut through; not to scale, what is too long or proud drawn larger. */
export function drawBearing(given: AnyGiven, box: DrawingBox): Drawn {
  switch (given.choice('bearing')) {
    case 'ball':
      return drawSleeve(given, box);
    case 'taper':
      return drawTaper(given, box);
    case 'seat':
      return drawSeat(given, box);
    case 'ring':
      return drawRing(given, box);
    default:
      return {
        shapes: <SleeveSection at={sectionIn(box)} side={0} />,
        sizes: [],
        words: 'Two bearings on a spindle: choose what is asked of them.',
      };
  }
}

function answerOf(given: AnyGiven) {
  const worked = bearingSeatWorksheet.work(given);
  return worked.is === 'answered' ? worked.answer : undefined;
}

function drawSleeve(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const answer = answerOf(given);
  const found = answer?.kind === 'ball' ? answer.found : undefined;
  const excess = found?.present?.value;
  const [between, sleeve] = [given.size('between'), given.size('sleeve')];
  const length = sleeve ? mean(sleeve.least) : found?.make.target;
  const words = excess && excessWords(excess, unit);
  return {
    shapes: <SleeveSection at={sectionIn(box)} side={excess ? sideOf(excess) : 0} />,
    sizes: column(box, [
      labelled(given, 'between', 'distance'),
      labelled(given, 'sleeve', 'sleeve'),
      labelled(given, 'direct', 'read longer'),
    ]),
    running: running(box, words ?? (found && `make ${figure(found.make.target, unit)}`)),
    words: between
      ? `Two ball bearings on a sleeve. Distance between their faces ${show(mean(between.most), unit)}${
          length ? `, sleeve ${show(length, unit)}` : ''
        }${words === undefined ? '' : `, ${words}`}. Not to scale.`
      : 'Two ball bearings on a sleeve. Not to scale.',
  };
}

const SET_BY = {
  nut: 'the nut',
  'shim-between': 'the shim between',
  'shim-behind': 'the shim behind',
} as const;

function drawTaper(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const chosen = given.choice('setBy');
  const setBy =
    chosen === 'nut' || chosen === 'shim-between' || chosen === 'shim-behind' ? chosen : undefined;
  const endPlay = given.size('endPlay');
  const now = endPlay && sayPlay(mean(endPlay.least), unit);
  return {
    shapes: <TaperSection at={sectionIn(box)} setBy={setBy} />,
    sizes: [
      ...column(box, [
        labelled(given, 'endPlay', 'end play'),
        labelled(given, 'lower', 'least'),
        labelled(given, 'upper', 'most'),
      ]),
      ...(setBy === undefined
        ? []
        : [setBy === 'nut' ? nutLabel(given, box) : atTopRight(labelled(given, 'shim', 'shim'), box)]),
    ],
    running: running(box, now),
    words: `Two taper roller bearings${now === undefined ? '' : `: ${now} now`}.${
      setBy ? ` Set by ${SET_BY[setBy]}.` : ''
    } Not to scale.`,
  };
}

function nutLabel(given: AnyGiven, box: DrawingBox): DrawnSize {
  const thread = given.choice('thread')?.split(' ')[0]?.replace('x', ' × ');
  return atTopRight({ field: 'thread', name: 'nut', figure: thread }, box);
}

function drawSeat(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const answer = answerOf(given);
  const proud = answer?.kind === 'seat' ? answer.found.proud : undefined;
  const read = given.has('directBelow') && !given.has('directProud') ? 'directBelow' : 'directProud';
  return {
    shapes: (
      <SeatSection
        at={sectionIn(box)}
        side={proud ? sideOf(proud) : 0}
        isKnown={proud !== undefined}
        hasMore={given.has('alsoIn')}
      />
    ),
    sizes: [
      ...column(box, [
        labelled(given, 'depth', 'depth'),
        labelled(given, 'width', 'bearing'),
        labelled(given, 'alsoIn', 'besides'),
      ]),
      atTopRight(labelled(given, read, read === 'directBelow' ? 'read below' : 'read proud'), box),
    ],
    running: running(box, proud && proudWords(proud, unit)),
    words: `A bearing in its recess.${proud ? ` ${saySeat({ proud }, unit)}` : ''} Not to scale.`,
  };
}

function drawRing(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const answer = answerOf(given);
  const found = answer?.kind === 'ring' ? answer.found : undefined;
  const chosen = given.choice('ring');
  const ring = chosen === 'inner' || chosen === 'outer' ? chosen : undefined;
  const isShaft = ring !== 'outer';
  const limits = found && `${found.fit.seatClass} ${sayLimits(found.fit.seat, unit)}`;
  const nominal = given.exact('ringNominal');
  return {
    shapes: <RingSection at={sectionIn(box)} ring={ring} />,
    sizes: column(box, [
      { field: 'ringNominal', name: 'bearing', figure: nominal && figure(nominal, unit) },
      isShaft ? labelled(given, 'shaft', 'shaft') : labelled(given, 'housing', 'housing'),
      isShaft ? labelled(given, 'ringBore', 'ring’s bore') : labelled(given, 'ringOutside', 'ring’s outside'),
    ]),
    running: running(box, limits),
    words: `A bearing on its shaft and in its housing.${
      limits === undefined ? '' : ` The ${isShaft ? 'shaft' : 'housing'} is good as ${limits} ${unit}.`
    } Not to scale.`,
  };
}

type Label = Pick<DrawnSize, 'field' | 'name' | 'figure'>;

function labelled(given: AnyGiven, field: string, name: string): Label {
  // The races come closest together where the sleeve is shortest.
  const size = given.size(field)?.[field === 'sleeve' ? 'least' : 'tightest'];
  return { field, name, figure: size && sizeFigure(size, given.unit) };
}

/** One under the other on the left, beside the section. */
function column(box: DrawingBox, labels: readonly Label[]): readonly DrawnSize[] {
  const apart = Math.min(44, box.height * 0.27);
  return labels.map((label, index) => ({
    ...label,
    x: 14,
    y: 24 + index * apart,
    anchor: 'start',
    beside: true,
  }));
}

function atTopRight(label: Label, box: DrawingBox): DrawnSize {
  return { ...label, x: box.width - 12, y: 22, anchor: 'end', beside: true };
}

function running(box: DrawingBox, text: string | undefined): Drawn['running'] {
  return text === undefined ? undefined : { text, x: box.width - 10, y: box.height - 8 };
}

function sideOf(size: Length): 1 | -1 | 0 {
  if (isZero(size)) return 0;
  return isNegative(size) ? -1 : 1;
}

function excessWords(excess: Length, unit: ShownUnit): string {
  if (isZero(excess)) return 'just as long';
  return `${figure(excess, unit).replace('−', '')} ${isNegative(excess) ? 'short' : 'long'}`;
}

function proudWords(proud: Length, unit: ShownUnit): string {
  if (isZero(proud)) return 'level';
  return `${figure(proud, unit).replace('−', '')} ${isNegative(proud) ? 'below' : 'proud'}`;
}
