/**
 * Places behind the point of currencies that don't have two, by sign or code.
 *
 * Source: ISO 4217, minor units; from memory. The yen's sign is also the yuan's, which has two places: it is not here,
 * so that no jiao is rounded away. `JPY` or `円` is the yen.
 */
export const minorUnits: readonly { readonly sign: string; readonly places: number }[] = [
  { sign: 'JPY', places: 0 },
  { sign: '円', places: 0 },
  { sign: 'KRW', places: 0 },
  { sign: '₩', places: 0 },
  { sign: 'VND', places: 0 },
  { sign: '₫', places: 0 },
  { sign: 'CLP', places: 0 },
  { sign: 'ISK', places: 0 },
  { sign: 'PYG', places: 0 },
  { sign: 'UGX', places: 0 },
  { sign: 'XAF', places: 0 },
  { sign: 'XOF', places: 0 },
  { sign: 'BHD', places: 3 },
  { sign: 'IQD', places: 3 },
  { sign: 'JOD', places: 3 },
  { sign: 'KWD', places: 3 },
  { sign: 'LYD', places: 3 },
  { sign: 'OMR', places: 3 },
  { sign: 'TND', places: 3 },
];

const USUAL_PLACES = 2;

/** Places of a currency's smallest unit; two unless the table says otherwise. */
export function minorPlaces(sign: string): number {
  const wanted = sign.trim().toUpperCase();
  return minorUnits.find((one) => one.sign === wanted)?.places ?? USUAL_PLACES;
}
