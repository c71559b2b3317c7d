import type { BushingQuestion } from '../../press/bushing.ts';
import type { Cold, Condition, Finish } from '../../press/tables/press-practice.ts';
import { isJoint } from '../../fit/joint-limits.ts';
import { jointClass, type FitSystem } from '../../fit/fits.ts';
import { bushingClasses } from '../../fit/tables/joint-classes.ts';
import { sizeStep } from '../../length/metal-on.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { systemOfSize } from '../class-fields.ts';
import type { Fields } from '../fields.ts';
import type { Given } from '../given.ts';
import { bushingFields, type BushingFields } from './fields.ts';

type BushingGiven = Given<BushingFields>;

const SHOP_CELSIUS = 20; // the reference temperature of ISO 1, until the fitter says otherwise

/** What a bushing worksheet asks, once the worn bore, its pin, how it runs and both metals are known. */
export function bushingQuestion(given: BushingGiven): BushingQuestion | undefined {
  const bore = given.size('bore');
  const pin = given.size('pin');
  const part = materialNamed(given.choice('partMetal'));
  const bushing = materialNamed(given.choice('bushingMetal'));
  const joint = given.choice('joint');
  if (!bore || !pin || !part || !bushing || !isJoint(joint)) return undefined;
  const system = systemOf(given);
  const axis = given.choice('axis');
  const reamed = given.size('reamed');
  const outside = given.size('outside');
  const pinMetal = materialNamed(given.choice('pinMetal'));
  return {
    bore,
    pin,
    part,
    bushing,
    insideClass: given.choice(system === 'iso' ? 'isoClass' : 'ansiClass') ?? jointClass(joint, system),
    pressClass: pressClassOf(given),
    finish: finishOf(given.choice('finish')),
    condition: conditionOf(given.choice('condition')),
    cold: coldOf(given.choice('cold')),
    shopCelsius: given.number('shopTemperature') ?? SHOP_CELSIUS,
    step: sizeStep('outside', given.dial),
    shop: given.unit,
    ...exactSizes(given),
    ...numbers(given),
    ...(axis !== undefined && { keepsAxis: axis === 'old' }),
    ...(reamed && { reamed }),
    ...(outside && { outside }),
    ...(pinMetal && { pinMetal }),
  };
}

export function systemOf(given: BushingGiven): FitSystem {
  return systemOfSize(given, 'bore');
}

/** The class picked to press it in with, else the usual one for a thin-walled bushing. */
export function pressClassOf(given: BushingGiven): string {
  const system = systemOf(given);
  return given.choice(system === 'iso' ? 'isoPress' : 'ansiPress') ?? bushingClasses[system];
}

/** What is listed: the classes of the system in hand only. */
export function bushingFieldsFor(given: BushingGiven): Fields {
  const others = systemOf(given) === 'iso' ? ['ansiClass', 'ansiPress'] : ['isoClass', 'isoPress'];
  return Object.fromEntries(Object.entries(bushingFields).filter(([name]) => !others.includes(name)));
}

function exactSizes(given: BushingGiven) {
  const wall = given.exact('wall');
  const nominal = given.exact('nominal');
  const thickWall = given.exact('thickWall');
  const length = given.exact('length');
  const reamTo = given.exact('reamTo');
  const plating = given.exact('plating');
  const leastWall = given.exact('leastWall');
  const leastBushingWall = given.exact('leastBushingWall');
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

function numbers(given: BushingGiven) {
  const hotCelsius = given.number('hotTemperature');
  const coldestCelsius = given.number('coldTemperature');
  const partYieldMpa = given.number('partYield');
  const bushingYieldMpa = given.number('bushingYield');
  return {
    ...(hotCelsius !== undefined && { hotCelsius }),
    ...(coldestCelsius !== undefined && { coldestCelsius }),
    ...(partYieldMpa !== undefined && { partYieldMpa }),
    ...(bushingYieldMpa !== undefined && { bushingYieldMpa }),
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
