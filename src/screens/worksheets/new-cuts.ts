import type { CutOffer } from '../../engine/cut/cut.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { basisOf } from '../../store/kept/basis.ts';
import type { NewCut } from '../../store/kept/cuts.ts';
import type { Basis, Id } from '../../store/base/records.ts';
import { featuresIn } from '../../store/kept/worksheets.ts';
import { sizeOfPart } from '../cuts/size-of-part.ts';
import { limitEntries, roundedEntry } from '../cuts/entry-of-length.ts';
import { assumedElsewhere } from './assumed-elsewhere.ts';
import { assumedChoices } from './assumed-choices.ts';
import { isTaken, machineOf, materialOf, type CutPicks } from './cut-picks.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The cuts of a way as they go on the list: those that are taken, with what they were worked out from. */
export function newCuts(data: WorksheetData, way: CutWay, picks: CutPicks): readonly NewCut[] {
  const basis = basisNow(data);
  return way.offers.flatMap((offer, index) => {
    const place = { way, index };
    if (!isTaken(picks, place)) return [];
    const material = materialOf(picks, place);
    const partId = partOf(data, offer.part);
    return [
      {
        jobId: data.job.id,
        worksheetId: data.worksheet.id,
        ...(partId !== undefined && { partId }),
        name: offer.name,
        part: offer.part,
        operation: offer.operation,
        of: offer.of,
        ...figuresOf(offer, data),
        ...(material !== undefined && { material }),
        cuttingTool: 'hss',
        machine: machineOf(picks, place),
        ...(offer.drill !== undefined && { drill: offer.drill }),
        ...(offer.thread !== undefined && { thread: offer.thread }),
        basis,
      },
    ];
  });
}

/** An offer's figures as a cut keeps them. */
export function figuresOf(offer: CutOffer, data: WorksheetData) {
  const { unit } = data;
  const { setOver, threading } = offer;
  const assumed = [...assumedElsewhere(data), ...assumedChoices(data)].map(({ words }) => words);
  return {
    ...(offer.present && { blank: roundedEntry(offer.present, unit, 'nearest') }),
    ...limitEntries(offer, unit),
    limitsFrom: offer.limitsFrom,
    ...(setOver && { setOver: roundedEntry(setOver.by, unit, 'nearest') }),
    ...(setOver?.within && { setOverWithin: roundedEntry(setOver.within, unit, 'down') }),
    ...(offer.at && {
      stands: { x: roundedEntry(offer.at.x, unit, 'nearest'), y: roundedEntry(offer.at.y, unit, 'nearest') },
    }),
    ...(offer.compoundDegrees !== undefined && { compoundDegrees: offer.compoundDegrees.toFixed(5) }),
    ...(threading && {
      threading: {
        ...threading,
        wire: roundedEntry(threading.wire, unit, 'nearest'),
        pitch: roundedEntry(threading.pitch, unit, 'nearest'),
      },
    }),
    ...(assumed.length > 0 && { assumed: assumed.join(', ') }),
  };
}

/** The readings that count for this worksheet now, and its own inputs. */
export function basisNow({ worksheet, readings }: Pick<WorksheetData, 'worksheet' | 'readings'>): Basis {
  const features = featuresIn(worksheet);
  return basisOf(
    worksheet,
    readings.filter(({ featureId }) => features.has(featureId)),
  );
}

/** The job's part a cut is made on, where its size was read on one. */
function partOf({ worksheet, features }: WorksheetData, name: string): Id | undefined {
  const input = sizeOfPart(worksheet, name);
  if (input?.from !== 'feature') return undefined;
  return features.find(({ id }) => id === input.featureId)?.partId;
}
