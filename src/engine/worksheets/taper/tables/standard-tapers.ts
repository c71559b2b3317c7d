import { lengthOf, type Length } from '../../../length/length.ts';

/** Diameter grows by `rise` over the length `over`. Both exact. */
export type Slope = { readonly rise: Length; readonly over: Length };

export type StandardTaper = {
  readonly id: string;
  readonly name: string;
  readonly group: string;
  readonly slope: Slope;
  /** At the gauge line, where the standard gives one. */
  readonly gauge?: Length;
  readonly source: string;
};

const MM = lengthOf('1 mm');
const oneIn = (over: string): Slope => ({ rise: MM, over: lengthOf(`${over} mm`) });

const ISO_296 = 'ISO 296 (ASME B5.10), from memory; ends and per foot seen on printed charts';
const morse = (number: number, over: string, gauge: string): StandardTaper => ({
  id: `morse-${number}`,
  name: `Morse ${number}`,
  group: 'Morse',
  slope: oneIn(over),
  gauge: lengthOf(`${gauge} mm`),
  source: ISO_296,
});

const steep = (number: number, gauge: string): StandardTaper => ({
  id: `steep-${number}`,
  name: `7/24 No. ${number}`,
  group: '7/24',
  slope: { rise: lengthOf('7 mm'), over: lengthOf('24 mm') },
  gauge: lengthOf(`${gauge} mm`),
  source: 'ISO 297, from memory',
});

const ratio = (over: string, used: string, source: string): StandardTaper => ({
  id: `one-in-${over}`,
  name: `1 in ${over}, ${used}`,
  group: 'Others',
  slope: oneIn(over),
  source,
});

/** Tapers that a fitter meets by name. */
export const standardTapers: readonly StandardTaper[] = [
  morse(0, '19.212', '9.045'),
  morse(1, '20.047', '12.065'),
  morse(2, '20.020', '17.780'),
  morse(3, '19.922', '23.825'),
  morse(4, '19.254', '31.267'),
  morse(5, '19.002', '44.399'),
  morse(6, '19.180', '63.348'),
  steep(30, '31.750'),
  steep(40, '44.450'),
  steep(45, '57.150'),
  steep(50, '69.850'),
  ratio('10', 'shaft ends', 'ISO 775, from memory'),
  ratio('12', 'bearing sleeves', 'ISO 2982-1, from memory'),
  ratio('16', 'pipe thread', 'ISO 7-1, ASME B1.20.1: 3/4 in a foot'),
  ratio('20', 'metric shanks', 'ISO 296, from memory'),
  ratio('48', 'inch taper pin', 'ASME B18.8.2: 1/4 in a foot'),
  ratio('50', 'metric taper pin', 'ISO 2339'),
];

export function standardTaper(id: string | undefined): StandardTaper | undefined {
  return standardTapers.find((one) => one.id === id);
}
