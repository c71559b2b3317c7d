/**
 * Drills that insert makers' charts list before the insert's tap, by thread: for aluminium, for steel.
 * Where a thread isn't here, or the listed drill lies outside the limits of the tapped hole, the limits choose.
 */
export type ListedInsertDrill = {
  readonly aluminium?: string;
  readonly steel?: string;
  readonly published?: string;
};

const both = (drill: string): ListedInsertDrill => ({ aluminium: drill, steel: drill });

export const listedInsertDrills: Readonly<Record<string, ListedInsertDrill>> = {
  // Inch: all from memory of insert makers' charts, unconfirmed.
  '#2-56 UNC': { aluminium: '3/32', steel: '#41' },
  '#6-32 UNC': { aluminium: '#26', steel: '#25' },
  '#8-32 UNC': { aluminium: '#17', steel: '#16' },
  '#10-24 UNC': { aluminium: '13/64', steel: '#5' },
  '#12-24 UNC': both('#1'),
  '1/4-20 UNC': both('H'),
  '5/16-18 UNC': both('Q'),
  '1/2-13 UNC': { aluminium: '33/64', steel: '17/32' }, // under the minor minimum and over the maximum: neither is offered
  '5/8-11 UNC': { steel: '21/32' },
  '1-8 UNC': { steel: '1-1/32' },
  '#10-32 UNF': both('13/64'),
  '7/16-20 UNF': both('29/64'),
  '1/2-20 UNF': both('33/64'),
  '9/16-18 UNF': both('37/64'),
  '5/8-18 UNF': both('41/64'),
  '3/4-16 UNF': both('49/64'),
  '7/8-14 UNF': both('57/64'),
  '1-14 UNS': both('1-1/64'),
  // Metric: memory of insert makers' charts, unconfirmed, but for the printed ones.
  'M3x0.5': both('3.2 mm'), // a secondary DIN 8140 table lists 3.1 mm, under the minor minimum
  'M4x0.7': { ...both('4.2 mm'), published: 'DIN 8140 dimension table (secondary source)' },
  M7x1: both('7.3 mm'),
  'M8x1.25': { ...both('8.4 mm'), published: 'DIN 8140 dimension table (secondary source)' },
  'M10x1.5': { ...both('10.5 mm'), published: 'DIN 8140 dimension table (secondary source)' },
  'M10x1.25': both('10.4 mm'),
  M10x1: both('10.3 mm'),
  'M12x1.75': both('12.5 mm'),
  'M12x1.5': both('12.5 mm'),
  'M12x1.25': both('12.4 mm'),
  M14x2: both('14.5 mm'),
  'M14x1.5': both('14.5 mm'),
  'M16x1.5': both('16.5 mm'),
  'M18x1.5': both('18.5 mm'),
  'M22x1.5': both('22.5 mm'),
};
