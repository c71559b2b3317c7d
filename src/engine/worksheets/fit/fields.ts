import { lengthOf } from '../../length/length.ts';
import { ansiClassField, isoClassField, jointField, systemField, zoneFields } from '../class-fields.ts';
import type { Fields } from '../fields.ts';
import { inUseFields, metalField } from '../in-use.ts';

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const USUAL_PIN = { least: lengthOf('.03 in'), most: lengthOf('8 in') };

export const fitFields = {
  bore: {
    enter: 'size',
    label: 'Bore',
    ask: 'Bore',
    measures: 'bore',
    slip: { near: ['pin'] },
  },
  pin: { enter: 'size', label: 'Pin', ask: 'Pin', measures: 'pin', slip: { near: ['bore'] } },
  nominal: {
    enter: 'size',
    label: 'Nominal size',
    ask: 'Nominal size',
    slip: { usual: USUAL_PIN, near: ['pin', 'bore'] },
  },
  joint: jointField,
  system: systemField,
  isoClass: isoClassField,
  ansiClass: ansiClassField,
  ...zoneFields,
  slop: {
    enter: 'size',
    label: 'Clearance, read',
    ask: 'Clearance: whole swing of an indicator at the bore',
    measures: 'gap',
    direct: true,
  },
  boreMetal: metalField('Metal round the bore', 'What is the part with the bore made of?'),
  pinMetal: metalField('Pin’s metal', 'What is the pin made of?'),
  ...inUseFields,
} as const satisfies Fields;

export type FitFields = typeof fitFields;
