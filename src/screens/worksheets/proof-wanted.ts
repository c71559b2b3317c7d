import { bushing } from '../../engine/press/bushing.ts';
import { mean } from '../../engine/reading/estimate.ts';
import { fitLimits, type FitLimits } from '../../engine/fit/fits.ts';
import { lengthOf, negate, type Length } from '../../engine/length/length.ts';
import { worksheets } from '../../engine/worksheets/all-worksheets.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { Leg } from '../../engine/reading/settle.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { axleWanted } from './axle-proof-wanted.ts';
import { sleeveWant } from './bearing-seat-question.ts';
import { bushingQuestion } from './bushing-question.ts';
import { fitQuestion } from './fit-question.ts';
import { wantedClearance } from './hole-and-pin-question.ts';
import { givenOf } from './given-of.ts';
import { stackParts, stackWant } from './spacer-stack-question.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

/** What a worksheet wants of a sum of sizes, known or not yet. */
export type Wanted = {
  readonly limits: Limits;
  readonly legs: readonly Leg[];
  /** The legs are so many times the sum, where it holds halves; limits are of the sum itself. */
  readonly times?: number;
};

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('1/2 in');

/**
 * What a worksheet wants that a size of this kind goes into, before it is read; undefined where it wants nothing yet.
 * `name` is the worksheet's name of the size, where it is known which one is read.
 */
export function wantedOf(data: WorksheetData, kind: FeatureKind, name?: string): Wanted | undefined {
  switch (data.worksheet.kind) {
    case 'hole-and-pin':
      return holeAndPinWanted(data);
    case 'spacer-stack':
      return stackWanted(data, kind);
    case 'fit':
      return fitWanted(data, kind);
    case 'bushing':
      return bushingWanted(data, name);
    case 'ring':
      return worksheets.ring.wanted(givenOf(data), kind, name);
    case 'bearing-seat':
      return bearingWanted(data, kind);
    case 'axle-line-up':
      return axleWanted(data, name);
    default:
      return undefined;
  }
}

function sizeOf(data: WorksheetData, name: string): Length {
  const known = knownSize(data, data.worksheet.sizes[name]);
  return known ? mean(known.tightest) : SOME_SIZE;
}

function holeAndPinWanted(data: WorksheetData): Wanted | undefined {
  const limits = wantedClearance(data);
  const size = sizeOf(data, data.worksheet.sizes['pin'] ? 'pin' : 'bore');
  return limits && { limits, legs: boreLessPin(size) };
}

function boreLessPin(size: Length): readonly Leg[] {
  return [
    { kind: 'bore', size, coefficient: 1 },
    { kind: 'pin', size, coefficient: -1 },
  ];
}

function stackWanted(data: WorksheetData, kind: FeatureKind): Wanted {
  const fixed = sizeOf(data, 'fixed');
  const { limits } = stackWant(data);
  if (kind === 'gap') return { limits, legs: [{ kind: 'gap', size: fixed, coefficient: 1 }] };
  const parts = stackParts(data).map(({ input }): Leg => {
    const known = knownSize(data, input.size);
    return { kind: 'length', size: known ? mean(known.tightest) : SOME_SIZE, coefficient: -input.count };
  });
  return { limits, legs: [{ kind: 'length', size: fixed, coefficient: 1 }, ...parts] };
}

/** The class's limits of the one part; of the clearance where that is read itself. */
function fitWanted(data: WorksheetData, kind: FeatureKind): Wanted | undefined {
  const question = fitQuestion(data);
  const fit = question && fitLimits(question);
  if (!question || fit?.ok !== true) return undefined;
  const range = fitRange(fit.value, kind);
  return (
    range && {
      limits: { ...range, source: fit.value.source },
      legs: [{ kind, size: question.nominal, coefficient: 1 }],
    }
  );
}

function fitRange({ hole, pin, clearance }: FitLimits, kind: FeatureKind) {
  if (kind === 'bore') return hole;
  if (kind === 'pin') return pin;
  return kind === 'gap' ? clearance : undefined;
}

/** The grip of the bushing in its reamed bore; the worn bore and the pin that is there only have to be known roughly. */
function bushingWanted(data: WorksheetData, name: string | undefined): Wanted | undefined {
  if (name !== undefined && name !== 'reamed' && name !== 'outside') return undefined;
  const question = bushingQuestion(data);
  const answer = question && bushing(question);
  if (answer?.ok !== true) return undefined;
  const { clearance, nominal, source } = answer.value.pressFit;
  return {
    limits: { lower: negate(clearance.upper), upper: negate(clearance.lower), source },
    legs: boreLessPin(nominal),
  };
}

function bearingWanted(data: WorksheetData, kind: FeatureKind): Wanted | undefined {
  const { sizes, choices } = data.worksheet;
  const lower = exactSize(data, sizes['lower']);
  const upper = exactSize(data, sizes['upper']);
  const own = lower && upper && { lower, upper, source: 'your own limits' };
  const leg = (of: FeatureKind, name: string, coefficient: number): Leg => ({
    kind: of,
    size: sizeOf(data, name),
    coefficient,
  });
  switch (choices['bearing']) {
    case 'ball':
      return {
        limits: sleeveWant(data).limits,
        legs:
          kind === 'depth'
            ? [leg('depth', 'direct', 1)]
            : [leg('length', 'sleeve', 1), leg('length', 'between', -1)],
      };
    case 'taper':
      return own && kind === 'gap' ? { limits: own, legs: [leg('gap', 'endPlay', 1)] } : undefined;
    case 'seat': {
      const alsoIn = sizes['alsoIn'] ? [leg('length', 'alsoIn', 1)] : [];
      return own && { limits: own, legs: [leg('length', 'width', 1), ...alsoIn, leg('depth', 'depth', -1)] };
    }
    default:
      return undefined;
  }
}
