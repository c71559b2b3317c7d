import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { StepOffer as EngineStepOffer } from '../../engine/worksheets/worksheet.ts';
import { givenOf } from '../worksheets/given-of.ts';
import type { AssemblyStep } from '../../store/base/records.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

export type StepOffer = Pick<AssemblyStep, 'text'> &
  Partial<Pick<AssemblyStep, 'orientation' | 'torque' | 'worksheetId'>>;

/** The steps a worksheet's answer puts into an order; none for a kind that has none, or that lacks a size still. */
export function stepsFromWorksheet(data: WorksheetData): readonly StepOffer[] {
  const offers = worksheetOf(data.worksheet.kind)?.steps(givenOf(data)) ?? [];
  return offers.map((offer) => asStep(offer, data));
}

/** A step as the engine offers it, with its worksheet where its drawing stands beside it. */
function asStep(
  { text, orientation, torqueIn, drawn }: EngineStepOffer,
  { worksheet }: WorksheetData,
): StepOffer {
  return {
    text,
    ...(orientation !== undefined && { orientation }),
    ...(torqueIn && { torque: { typed: '', unit: torqueIn, source: '' } }),
    ...(drawn && { worksheetId: worksheet.id }),
  };
}
