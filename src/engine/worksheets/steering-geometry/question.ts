import { typedEstimate } from '../../reading/estimate.ts';
import { zero } from '../../length/length.ts';
import type { NamesOf } from '../fields.ts';
import type { Given } from '../given.ts';
import type { SteeringFields } from './fields.ts';
import type { SteeringBefore, SteeringChange } from './steering-geometry.ts';

export type SteeringGiven = Given<SteeringFields>;

/** A digital level on the fork leg. Common practice, no source. */
export const USUAL_RAKE_WITHIN_DEGREES = 0.2;

export type SteeringQuestion = { readonly before: SteeringBefore; readonly change: SteeringChange };

/** The question a steering-geometry worksheet asks the engine, once the machine as it stands is known. */
export function steeringQuestion(given: SteeringGiven): SteeringQuestion | undefined {
  const before = machineNow(given);
  return before && { before, change: changeOf(given) };
}

function machineNow(given: SteeringGiven): SteeringBefore | undefined {
  const known = (name: NamesOf<SteeringFields, 'size'>) => given.size(name)?.loosest;
  const rakeDegrees = given.number('rake');
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
    rakeWithinDegrees: given.number('rakeWithin') ?? USUAL_RAKE_WITHIN_DEGREES,
    frontRadius,
    rearRadius,
    wheelbase,
    clampOffset,
    axleLead: known('axleLead') ?? typedEstimate(zero),
    extraAngleDegrees: given.number('extraAngle') ?? 0,
    ...(forkLength && { forkLength }),
  };
}

function changeOf(given: SteeringGiven): SteeringChange {
  const size = given.exact;
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
  const extraAngleDegrees = given.number('newExtraAngle');
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
