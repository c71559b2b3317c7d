import { typedEstimate } from '../../engine/reading/estimate.ts';
import { zero } from '../../engine/length/length.ts';
import type {
  SteeringBefore,
  SteeringChange,
} from '../../engine/worksheets/steering-geometry/steering-geometry.ts';
import { exactSize, givenNumber, knownSize, type WorksheetData } from './worksheet-data.ts';

/** A digital level on the fork leg. Common practice, no source. */
export const USUAL_RAKE_WITHIN_DEGREES = 0.2;

export type SteeringQuestion = { readonly before: SteeringBefore; readonly change: SteeringChange };

/** The question a steering-geometry worksheet asks the engine, once the machine as it stands is known. */
export function steeringQuestion(data: WorksheetData): SteeringQuestion | undefined {
  const before = machineNow(data);
  return before && { before, change: changeOf(data) };
}

function machineNow(data: WorksheetData): SteeringBefore | undefined {
  const known = (name: string) => knownSize(data, data.worksheet.sizes[name])?.loosest;
  const rakeDegrees = givenNumber(data, 'rake');
  const [frontRadius, rearRadius, wheelbase, clampOffset] = [
    known('frontRadius'),
    known('rearRadius'),
    known('wheelbase'),
    known('clampOffset'),
  ];
  if (rakeDegrees === undefined || !frontRadius || !rearRadius || !wheelbase || !clampOffset)
    return undefined;
  const forkLength = known('forkLength');
  return {
    rakeDegrees,
    rakeWithinDegrees: givenNumber(data, 'rakeWithin') ?? USUAL_RAKE_WITHIN_DEGREES,
    frontRadius,
    rearRadius,
    wheelbase,
    clampOffset,
    axleLead: known('axleLead') ?? typedEstimate(zero),
    extraAngleDegrees: givenNumber(data, 'extraAngle') ?? 0,
    ...(forkLength && { forkLength }),
  };
}

function changeOf(data: WorksheetData): SteeringChange {
  const size = (name: string) => exactSize(data, data.worksheet.sizes[name]);
  const [forkLonger, frontRadius, rearRadius] = [
    size('forkLonger'),
    size('newFrontRadius'),
    size('newRearRadius'),
  ];
  const [rearHigher, clampOffset, axleLead] = [
    size('rearHigher'),
    size('newClampOffset'),
    size('newAxleLead'),
  ];
  const extraAngleDegrees = givenNumber(data, 'newExtraAngle');
  return {
    ...(forkLonger && { forkLonger }),
    ...(frontRadius && { frontRadius }),
    ...(rearRadius && { rearRadius }),
    ...(rearHigher && { rearHigher }),
    ...(clampOffset && { clampOffset }),
    ...(extraAngleDegrees !== undefined && { extraAngleDegrees }),
    ...(axleLead && { axleLead }),
  };
}
