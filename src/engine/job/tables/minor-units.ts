/**
 * Places behind the point of currencies that don't have two, by sign or code.
 *
 * Source: ISO 4217, minor units; signs beside the codes from memory. The yen's sign is also the yuan's, which has two places: it is not here,
 * so that no jiao is rounded away. `JPY` or `円` is the yen.
 */
export const minorUnits: readonly { readonly sign: string; readonly places: number }[] = [
  { sign: 'JPY', places: 0 },
  { sign: '円', places: 0 },
  { sign: 'KRW', places: 0 },
  { sign: '₩', places: 0 },
  { sign: 'VND', places: 0 },
  { sign: '₫', places: 0 },
  ...['BIF', 'CLP', 'DJF', 'GNF', 'ISK', 'KMF', 'PYG', 'RWF', 'UGX', 'UYI', 'VUV', 'XAF', 'XOF', 'XPF'].map(
    (sign) => ({ sign, places: 0 }),
  ),
  // As they are written where they are paid with: Paraguay, Burundi, Djibouti, Rwanda, Guinea, the Comoros, Vanuatu, Uganda, both CFA francs, the CFP franc.
  ...['₲', 'GS', 'FBU', 'FDJ', 'FRW', 'RF', 'FG', 'CF', 'VT', 'USH', 'FCFA', 'CFA', 'FCFP', 'CFPF'].map(
    (sign) => ({
      sign,
      places: 0,
    }),
  ),
  // Vietnam and Korea as they are written there.
  ...['Đ', '원'].map((sign) => ({ sign, places: 0 })),
  // Bahrain, Jordan, Kuwait, Libya, Tunisia, Oman.
  ...['BD', 'JD', 'KD', 'LD', 'DT', 'RO'].map((sign) => ({ sign, places: 3 })),
  ...['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'].map((sign) => ({ sign, places: 3 })),
  ...['CLF', 'UYW'].map((sign) => ({ sign, places: 4 })),
];

const USUAL_PLACES = 2;

/** Places of a currency's smallest unit; two unless the table says otherwise. `F CFA` and `R.O.` are `FCFA` and `RO`. */
export function minorPlaces(sign: string): number {
  const wanted = sign.replace(/[\s.]/g, '').toUpperCase();
  return minorUnits.find((one) => one.sign === wanted)?.places ?? USUAL_PLACES;
}
