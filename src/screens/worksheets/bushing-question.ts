import type { BushingQuestion } from '../../engine/press/bushing.ts';
import { jointClass, type FitSystem } from '../../engine/fit/fits.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import { bushingClasses } from '../../engine/fit/tables/joint-classes.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import type { Cold, Condition, Finish } from '../../engine/press/tables/press-practice.ts';
import { isJoint, systemFor } from './fit-fields.ts';
import { exactSize, givenNumber, knownSize, type WorksheetData } from './worksheet-data.ts';

const SHOP_CELSIUS = 20; // the reference temperature of ISO 1, until the fitter says otherwise

/** What a bushing worksheet asks the engine, once the worn bore, its pin and both metals are known. */
export function bushingQuestion(data: WorksheetData): BushingQuestion | undefined {
  const { sizes, choices } = data.worksheet;
  const bore = knownSize(data, sizes['bore']);
  const pin = knownSize(data, sizes['pin']);
  const part = materialNamed(choices['partMetal']);
  const bushing = materialNamed(choices['bushingMetal']);
  const { joint } = choices;
  if (!bore || !pin || !part || !bushing || !isJoint(joint)) return undefined;
  const system = systemFor(data, 'bore');
  const reamed = knownSize(data, sizes['reamed']);
  const outside = knownSize(data, sizes['outside']);
  const hotCelsius = givenNumber(data, 'hotTemperature');
  const pinMetal = materialNamed(choices['pinMetal']);
  const coldestCelsius = givenNumber(data, 'coldTemperature');
  const partYieldMpa = givenNumber(data, 'partYield');
  const bushingYieldMpa = givenNumber(data, 'bushingYield');
  return {
    bore,
    pin,
    part,
    bushing,
    insideClass: choices[system === 'iso' ? 'isoClass' : 'ansiClass'] ?? jointClass(joint, system),
    pressClass: pressClassFor(data, system),
    finish: finishOf(choices['finish']),
    condition: conditionOf(choices['condition']),
    cold: coldOf(choices['cold']),
    shopCelsius: givenNumber(data, 'shopTemperature') ?? SHOP_CELSIUS,
    step: sizeStep('outside', { reads: data.dial.reads, graduation: data.dial.graduation.exact }),
    ...exactSizes(data),
    ...(choices['axis'] !== undefined && { keepsAxis: choices['axis'] === 'old' }),
    ...(reamed && { reamed }),
    ...(outside && { outside }),
    ...(hotCelsius !== undefined && { hotCelsius }),
    ...(pinMetal && { pinMetal }),
    ...(coldestCelsius !== undefined && { coldestCelsius }),
    ...(partYieldMpa !== undefined && { partYieldMpa }),
    ...(bushingYieldMpa !== undefined && { bushingYieldMpa }),
  };
}

/** The class picked to press it in with, else the usual one for a thin-walled bushing. */
export function pressClassFor({ worksheet: { choices } }: WorksheetData, system: FitSystem): string {
  return choices[system === 'iso' ? 'isoPress' : 'ansiPress'] ?? bushingClasses[system];
}

function exactSizes(data: WorksheetData) {
  const { sizes } = data.worksheet;
  const wall = exactSize(data, sizes['wall']);
  const nominal = exactSize(data, sizes['nominal']);
  const thickWall = exactSize(data, sizes['thickWall']);
  const length = exactSize(data, sizes['length']);
  const reamTo = exactSize(data, sizes['reamTo']);
  const plating = exactSize(data, sizes['plating']);
  const leastWall = exactSize(data, sizes['leastWall']);
  const leastBushingWall = exactSize(data, sizes['leastBushingWall']);
  return {
    ...(wall && { wall }),
    ...(nominal && { nominal }),
    ...(thickWall && { thickWall }),
    ...(length && { length }),
    ...(reamTo && { reamTo }),
    ...(plating && { plating }),
    ...(leastWall && { leastWall }),
    ...(leastBushingWall && { leastBushingWall }),
  };
}

function finishOf(value: string | undefined): Finish {
  return value === 'fine' || value === 'coarse' ? value : 'usual';
}

function conditionOf(value: string | undefined): Condition {
  return value === 'hardened' || value === 'plated' ? value : 'plain';
}

function coldOf(value: string | undefined): Cold {
  return value === 'dry-ice' || value === 'nitrogen' ? value : 'freezer';
}
