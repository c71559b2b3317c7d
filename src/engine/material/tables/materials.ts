/** A figure as books give it: one value, or the lowest and highest of those seen. */
export type Figure = {
  readonly low: number;
  readonly high: number;
  readonly source: string;
  /** Recalled, not seen: to be treated as unconfirmed, and said so where it is shown. */
  readonly basis: 'published' | 'memory';
  readonly note?: string;
  /** Of a cutting speed, where the book prints roughing and finishing apart. */
  readonly rough?: Range;
  readonly finish?: Range;
};

export type Range = { readonly low: number; readonly high: number };

/** A metal that the books below print figures of; of these the tables of depths and of heat have a row each. */
export type BookMaterialId =
  | 'low-carbon-steel'
  | 'alloy-steel'
  | 'stainless-303'
  | 'stainless-304'
  | 'aluminium-6061'
  | 'aluminium-7075'
  | 'brass-360'
  | 'bearing-bronze'
  | 'cast-iron'
  | 'titanium-6-4'
  | 'acetal';

/** A metal by its European name, as a metric shop buys it. */
export type EuropeanMetalId =
  | 'c45'
  | '42crmo4'
  | '16mncr5'
  | '1-4301'
  | '1-4305'
  | 'en-aw-6082'
  | 'en-aw-7075'
  | 'cusn7znpb'
  | 'cusn12'
  | 'gjl-250';

export type MaterialId = BookMaterialId | EuropeanMetalId;

/** What a part can be made of. A figure that was not found is left out. */
export type Material = {
  readonly id: MaterialId;
  readonly name: string;
  /** Linear expansion, millionths a degree. */
  readonly expansionPerMillionCelsius: Figure;
  readonly expansionPerMillionFahrenheit?: Figure;
  readonly expansionPerMillionCelsius4130?: Figure;
  readonly poisson: Figure;
  /** Cutting speeds for turning, surface feet a minute. */
  readonly speedHssSfm: Figure;
  readonly speedCarbideSfm?: Figure;
  /** Left out where the material breaks without yielding. */
  readonly yieldMpa?: Figure;
  readonly tensileMpa: Figure;
} & Stiffness;

/** Young's modulus, in the unit or units that the books print. */
type Stiffness =
  | { readonly modulusGpa: Figure; readonly modulusMsi?: Figure }
  | { readonly modulusGpa?: never; readonly modulusMsi: Figure };

const CAL_B6 = 'Callister, Fundamentals of Materials Science, App. B Table B.6';
const CAL_B2 = 'Callister, Fundamentals of Materials Science, App. B Table B.2';
const HIBBELER = 'Hibbeler, Mechanics of Materials, material properties appendix';
const MULTIMEDIA = 'Multimedia Engineering Mechanics material appendix';
const GEARS = 'Elements of Metric Gear Technology Table 18-10';
const HANDBOOK = "Machinery's Handbook, HSS turning table (as reprinted)";
const SUPPLIER = 'machine-tool supplier’s cutting speed chart (turning, 0.004 in/rev, 0.040 in deep)';
const LATHE = 'a lathe maker’s manual, HSS cutting speed table';
const AIRFORCE = 'USAF T.O. 1-1A-9 Table 2-8 (turning; low = rough, high = finish)';
const INSERTS = 'an insert maker’s start speeds';
const COURSE = 'machine tool speeds and feeds course sheet';
const STRENGTH = 'usual figure for the temper named, from memory; the mill certificate rules';

function figure(
  low: number,
  high: number,
  source: string,
  more: Pick<Figure, 'note' | 'rough' | 'finish'> & { readonly basis?: Figure['basis'] } = {},
): Figure {
  return { low, high, source, basis: 'published', ...more };
}

function roughAndFinish(
  [roughLow, roughHigh]: readonly [number, number],
  [finishLow, finishHigh]: readonly [number, number],
): Figure {
  return figure(Math.min(roughLow, finishLow), Math.max(roughHigh, finishHigh), AIRFORCE, {
    note: `${roughLow}-${roughHigh} rough, ${finishLow}-${finishHigh} finish`,
    rough: { low: roughLow, high: roughHigh },
    finish: { low: finishLow, high: finishHigh },
  });
}

function strength(low: number, high: number, note: string): Figure {
  return figure(low, high, STRENGTH, { basis: 'memory', note });
}

/** Expansion, stiffness and cutting speeds as the books named beside them print them; strengths are from memory. */
const bookMaterials: readonly (Material & { readonly id: BookMaterialId })[] = [
  {
    id: 'low-carbon-steel',
    name: 'Low carbon steel (1018, 1020)',
    expansionPerMillionCelsius: figure(11.7, 11.7, CAL_B6, { note: 'steel 1020' }),
    expansionPerMillionFahrenheit: figure(6.5, 6.5, CAL_B6, { note: 'steel 1020' }),
    modulusGpa: figure(207, 207, CAL_B2, { note: 'steel 1020' }),
    modulusMsi: figure(29, 30, `${CAL_B2}; ${HIBBELER}`, { note: '30 in Callister, 29 for A36 in Hibbeler' }),
    poisson: figure(0.29, 0.32, `${HIBBELER}; ${MULTIMEDIA}`, { note: 'A36 0.32 and 0.29 in two books' }),
    speedHssSfm: figure(70, 120, HANDBOOK, { note: '1006-1026, 100 to 275 HB' }),
    speedCarbideSfm: figure(800, 885, SUPPLIER, {
      note: 'coated insert level; start well below on a small lathe',
    }),
    yieldMpa: strength(210, 370, 'hot-rolled 1020 low, cold-drawn 1018 high'),
    tensileMpa: strength(380, 440, 'hot-rolled 1020 low, cold-drawn 1018 high'),
  },
  {
    id: 'alloy-steel',
    name: 'Alloy steel (4130, 4140)',
    expansionPerMillionCelsius: figure(12.3, 12.3, CAL_B6, { note: '4140' }),
    expansionPerMillionFahrenheit: figure(6.2, 6.8, `${CAL_B6}; ${GEARS}`, {
      note: '6.8 Callister, 6.2 gear handbook (32 to 212 °F)',
    }),
    modulusGpa: figure(207, 207, CAL_B2, { note: '4140' }),
    modulusMsi: figure(29, 30, `${CAL_B2}; ${GEARS}`),
    poisson: figure(0.29, 0.3, 'general engineering value', { basis: 'memory' }),
    speedHssSfm: figure(40, 110, HANDBOOK, { note: '4140 and 4150, 175 to 425 HB' }),
    speedCarbideSfm: figure(430, 685, SUPPLIER, { note: '4140/4150 free machining row' }),
    expansionPerMillionCelsius4130: figure(11.2, 12.3, 'data sheets (spread between sources)', {
      basis: 'memory',
      note: 'doubtful: 4130 usually quoted 11.1 to 12.3',
    }),
    yieldMpa: strength(415, 655, 'annealed low, hardened and tempered to about 28 HRC high'),
    tensileMpa: strength(655, 850, 'annealed low, hardened and tempered to about 28 HRC high'),
  },
  {
    id: 'stainless-303',
    name: 'Stainless 303',
    expansionPerMillionCelsius: figure(17.2, 17.3, 'data sheets', {
      basis: 'memory',
      note: '300 series: 9.6 millionths a °F in the gear handbook’s table',
    }),
    expansionPerMillionFahrenheit: figure(9.6, 9.6, GEARS, { note: 'AISI 300 series' }),
    modulusMsi: figure(28, 28, GEARS, { note: 'AISI 300 series' }),
    poisson: figure(0.27, 0.3, `${HIBBELER}; ${MULTIMEDIA}`, { note: 'values for 304 and 302' }),
    speedHssSfm: roughAndFinish([25, 55], [65, 105]),
    speedCarbideSfm: roughAndFinish([175, 240], [195, 350]),
    yieldMpa: strength(205, 240, 'annealed'),
    tensileMpa: strength(515, 620, 'annealed'),
  },
  {
    id: 'stainless-304',
    name: 'Stainless 304',
    expansionPerMillionCelsius: figure(17.2, 17.2, CAL_B6),
    expansionPerMillionFahrenheit: figure(9.6, 9.6, CAL_B6),
    modulusGpa: figure(193, 193, CAL_B2),
    modulusMsi: figure(28, 28, CAL_B2),
    poisson: figure(0.27, 0.27, HIBBELER),
    speedHssSfm: roughAndFinish([20, 40], [50, 80]),
    speedCarbideSfm: roughAndFinish([150, 200], [150, 300]),
    yieldMpa: strength(205, 240, 'annealed'),
    tensileMpa: strength(515, 585, 'annealed'),
  },
  {
    id: 'aluminium-6061',
    name: 'Aluminium 6061',
    expansionPerMillionCelsius: figure(23.6, 23.6, CAL_B6),
    expansionPerMillionFahrenheit: figure(13.1, 13.1, `${CAL_B6}; ${HIBBELER}`),
    modulusGpa: figure(69, 69, CAL_B2),
    modulusMsi: figure(10, 10, CAL_B2),
    poisson: figure(0.33, 0.35, `${MULTIMEDIA}; ${HIBBELER}`, { note: '0.33 and 0.35 in two books' }),
    speedHssSfm: figure(300, 600, `${LATHE}; ${SUPPLIER}`, { note: '300 in one, 500-600 in the other' }),
    speedCarbideSfm: figure(655, 2820, `${INSERTS}; ${SUPPLIER}`, { note: 'machine speed usually limits' }),
    yieldMpa: strength(240, 276, 'T6; the soft tempers are far weaker'),
    tensileMpa: strength(260, 310, 'T6; the soft tempers are far weaker'),
  },
  {
    id: 'aluminium-7075',
    name: 'Aluminium 7075',
    expansionPerMillionCelsius: figure(23.4, 23.4, CAL_B6),
    expansionPerMillionFahrenheit: figure(13, 13, CAL_B6),
    modulusGpa: figure(71, 71, CAL_B2),
    modulusMsi: figure(10.3, 10.4, `${CAL_B2}; ${MULTIMEDIA}`),
    poisson: figure(0.33, 0.33, MULTIMEDIA),
    speedHssSfm: figure(300, 600, `${LATHE}; ${SUPPLIER}`, { note: 'as 6061' }),
    speedCarbideSfm: figure(655, 2820, `${INSERTS}; ${SUPPLIER}`, { note: 'as 6061' }),
    yieldMpa: strength(455, 503, 'T6; the soft tempers are far weaker'),
    tensileMpa: strength(530, 572, 'T6; the soft tempers are far weaker'),
  },
  {
    id: 'brass-360',
    name: 'Brass C36000, free cutting',
    expansionPerMillionCelsius: figure(20.5, 20.5, CAL_B6),
    expansionPerMillionFahrenheit: figure(11.4, 11.4, CAL_B6),
    modulusGpa: figure(97, 97, CAL_B2, { basis: 'memory' }),
    modulusMsi: figure(15, 15, MULTIMEDIA, { note: 'red and naval brass rows' }),
    poisson: figure(0.34, 0.34, MULTIMEDIA, { note: 'red and naval brass rows' }),
    speedHssSfm: figure(150, 350, `${LATHE}; ${SUPPLIER}`, {
      note: '150 brass and bronze; 300-350 for C36000 group',
    }),
    speedCarbideSfm: figure(1170, 1170, SUPPLIER),
    yieldMpa: strength(125, 310, 'soft low, half hard high'),
    tensileMpa: strength(340, 400, 'soft low, half hard high'),
  },
  {
    id: 'bearing-bronze',
    name: 'Bearing bronze SAE 660 (C93200)',
    expansionPerMillionCelsius: figure(18, 18, CAL_B6),
    expansionPerMillionFahrenheit: figure(10, 10, CAL_B6),
    modulusGpa: figure(100, 100, CAL_B2, { basis: 'memory' }),
    poisson: figure(0.34, 0.35, 'general engineering value', { basis: 'memory' }),
    speedHssSfm: figure(150, 250, `${LATHE}; ${SUPPLIER}`, {
      note: '150 brass and bronze; 200-250 other bronzes',
    }),
    speedCarbideSfm: figure(715, 715, SUPPLIER, { note: 'bronze row' }),
    yieldMpa: strength(125, 140, 'cast'),
    tensileMpa: strength(240, 260, 'cast'),
  },
  {
    id: 'cast-iron',
    name: 'Grey cast iron (class 30)',
    expansionPerMillionCelsius: figure(11.4, 11.4, CAL_B6),
    expansionPerMillionFahrenheit: figure(6, 6.7, `${CAL_B6}; ${GEARS}; ${HIBBELER}`, {
      note: '6.3 Callister, 6.0 gear handbook, 6.7 Hibbeler',
    }),
    modulusGpa: figure(90, 113, CAL_B2),
    modulusMsi: figure(13, 16.4, CAL_B2),
    poisson: figure(0.22, 0.28, `${MULTIMEDIA}; ${HIBBELER}`),
    speedHssSfm: figure(50, 215, `${LATHE}; ${SUPPLIER}`, {
      note: '50 hard, 80 soft in one; 145-215 class 20-40 in the other',
    }),
    speedCarbideSfm: figure(410, 410, SUPPLIER),
    tensileMpa: strength(205, 230, 'breaks without yielding: the tensile strength stands in'),
  },
  {
    id: 'titanium-6-4',
    name: 'Titanium 6Al-4V',
    expansionPerMillionCelsius: figure(8.6, 8.6, CAL_B6),
    expansionPerMillionFahrenheit: figure(4.8, 5.3, `${CAL_B6}; ${HIBBELER}; ${MULTIMEDIA}`, {
      note: '4.8, 5.2 and 5.3 in three books',
    }),
    modulusGpa: figure(114, 120, `${CAL_B2}; ${HIBBELER}`, { note: '120 in Hibbeler' }),
    modulusMsi: figure(16.5, 17.4, `${MULTIMEDIA}; ${HIBBELER}`),
    poisson: figure(0.33, 0.36, `${MULTIMEDIA}; ${HIBBELER}`),
    speedHssSfm: figure(30, 50, `${LATHE}; ${COURSE}`),
    speedCarbideSfm: figure(100, 200, 'general practice', { basis: 'memory', note: 'doubtful' }),
    yieldMpa: strength(830, 880, 'annealed'),
    tensileMpa: strength(900, 950, 'annealed'),
  },
  {
    id: 'acetal',
    name: 'Acetal (POM)',
    expansionPerMillionCelsius: figure(100, 120, 'resin data sheets', {
      basis: 'memory',
      note: 'doubtful; direction and grade dependent',
    }),
    modulusGpa: figure(2.6, 3.1, 'resin data sheets', { basis: 'memory', note: 'doubtful' }),
    poisson: figure(0.35, 0.35, 'resin data sheets', { basis: 'memory' }),
    speedHssSfm: figure(300, 800, LATHE, { note: 'plastics row' }),
    yieldMpa: strength(60, 70, 'at 23 °C, short time'),
    tensileMpa: strength(60, 70, 'at 23 °C, short time'),
  },
];

const EN_STAINLESS = 'EN 10088-1, annex of physical properties (20 to 100 °C)';
const EN_USUAL = 'usual figure for the metal, from memory; the mill certificate rules';
const remembered = (low: number, high: number, note?: string) =>
  figure(low, high, EN_USUAL, { basis: 'memory', ...(note !== undefined && { note }) });

/** What each is cut, heated and cooled like: no book prints depths and speeds by these names. Common practice, no source. */
const LIKE: Readonly<Record<EuropeanMetalId, BookMaterialId>> = {
  c45: 'alloy-steel',
  '42crmo4': 'alloy-steel',
  '16mncr5': 'alloy-steel',
  '1-4301': 'stainless-304',
  '1-4305': 'stainless-303',
  'en-aw-6082': 'aluminium-6061',
  'en-aw-7075': 'aluminium-7075',
  cusn7znpb: 'bearing-bronze',
  cusn12: 'bearing-bronze',
  'gjl-250': 'cast-iron',
};

const isEuropean = (id: MaterialId): id is EuropeanMetalId => Object.hasOwn(LIKE, id);

/** The row of the tables of depths, heat and cold that goes for a material. */
export function rowOf(id: MaterialId): BookMaterialId {
  return isEuropean(id) ? LIKE[id] : id;
}

function speedsOf(id: EuropeanMetalId): Pick<Material, 'speedHssSfm' | 'speedCarbideSfm'> {
  const like = bookMaterials.find((material) => material.id === LIKE[id]);
  if (!like) throw new Error(`nothing is known that ${id} is cut like`);
  const { name, speedHssSfm, speedCarbideSfm } = like;
  const note = `as ${name}`;
  return {
    speedHssSfm: { ...speedHssSfm, note },
    ...(speedCarbideSfm && { speedCarbideSfm: { ...speedCarbideSfm, note } }),
  };
}

/** Metals by their European names. Speeds are those of the like metal of the books; what is from memory says so. */
export const europeanMetals: readonly Material[] = [
  {
    id: 'c45',
    name: 'Steel C45 (1.0503)',
    expansionPerMillionCelsius: remembered(11.1, 11.9),
    modulusGpa: remembered(205, 210),
    poisson: remembered(0.29, 0.3),
    yieldMpa: figure(305, 490, 'EN 10083-2', {
      note: 'normalized to 100 mm low, quenched and tempered to 16 mm high',
    }),
    tensileMpa: figure(580, 700, 'EN 10083-2', {
      note: 'normalized to 100 mm low, quenched and tempered to 16 mm high',
    }),
    ...speedsOf('c45'),
  },
  {
    id: '42crmo4',
    name: 'Steel 42CrMo4 (1.7225)',
    expansionPerMillionCelsius: remembered(11.1, 12.3),
    modulusGpa: remembered(205, 210),
    poisson: remembered(0.29, 0.3),
    yieldMpa: remembered(650, 750, 'quenched and tempered, to 100 mm low, to 40 mm high; EN 10083-3'),
    tensileMpa: remembered(900, 1000, 'quenched and tempered, to 100 mm low, to 40 mm high; EN 10083-3'),
    ...speedsOf('42crmo4'),
  },
  {
    id: '16mncr5',
    name: 'Steel 16MnCr5 (1.7131)',
    expansionPerMillionCelsius: remembered(11.1, 12.0),
    modulusGpa: remembered(205, 210),
    poisson: remembered(0.29, 0.3),
    yieldMpa: remembered(310, 590, 'soft low, core of a case-hardened part high'),
    tensileMpa: remembered(500, 780, 'soft low, core of a case-hardened part high'),
    ...speedsOf('16mncr5'),
  },
  {
    id: '1-4301',
    name: 'Stainless 1.4301 (X5CrNi18-10)',
    expansionPerMillionCelsius: figure(16, 16, EN_STAINLESS),
    modulusGpa: figure(200, 200, EN_STAINLESS),
    poisson: remembered(0.27, 0.3),
    yieldMpa: remembered(190, 240, 'solution annealed; EN 10088-3'),
    tensileMpa: remembered(500, 700, 'solution annealed; EN 10088-3'),
    ...speedsOf('1-4301'),
  },
  {
    id: '1-4305',
    name: 'Stainless 1.4305 (X8CrNiS18-9)',
    expansionPerMillionCelsius: figure(16, 16, EN_STAINLESS),
    modulusGpa: figure(200, 200, EN_STAINLESS),
    poisson: remembered(0.27, 0.3),
    yieldMpa: remembered(190, 240, 'solution annealed; EN 10088-3'),
    tensileMpa: remembered(500, 750, 'solution annealed; EN 10088-3'),
    ...speedsOf('1-4305'),
  },
  {
    id: 'en-aw-6082',
    name: 'Aluminium EN AW-6082',
    expansionPerMillionCelsius: remembered(23.1, 24),
    modulusGpa: remembered(69, 70),
    poisson: remembered(0.33, 0.34),
    yieldMpa: remembered(240, 260, 'T6; the soft tempers are far weaker; EN 755-2'),
    tensileMpa: remembered(280, 310, 'T6; the soft tempers are far weaker; EN 755-2'),
    ...speedsOf('en-aw-6082'),
  },
  {
    id: 'en-aw-7075',
    name: 'Aluminium EN AW-7075',
    expansionPerMillionCelsius: remembered(23.4, 23.6),
    modulusGpa: remembered(71, 72),
    poisson: remembered(0.33, 0.33),
    yieldMpa: remembered(440, 500, 'T6; the soft tempers are far weaker; EN 755-2'),
    tensileMpa: remembered(530, 560, 'T6; the soft tempers are far weaker; EN 755-2'),
    ...speedsOf('en-aw-7075'),
  },
  {
    id: 'cusn7znpb',
    name: 'Gunmetal CuSn7ZnPb, Rg7 (CC493K)',
    expansionPerMillionCelsius: remembered(18, 18.5),
    modulusGpa: remembered(90, 106),
    poisson: remembered(0.34, 0.35),
    yieldMpa: remembered(120, 130, 'sand cast low, continuously cast high; EN 1982'),
    tensileMpa: remembered(230, 270, 'sand cast low, continuously cast high; EN 1982'),
    ...speedsOf('cusn7znpb'),
  },
  {
    id: 'cusn12',
    name: 'Tin bronze CuSn12 (CC483K)',
    expansionPerMillionCelsius: remembered(18, 18.5),
    modulusGpa: remembered(90, 110),
    poisson: remembered(0.34, 0.35),
    yieldMpa: remembered(140, 150, 'sand cast low, continuously cast high; EN 1982'),
    tensileMpa: remembered(260, 300, 'sand cast low, continuously cast high; EN 1982'),
    ...speedsOf('cusn12'),
  },
  {
    id: 'gjl-250',
    name: 'Cast iron EN-GJL-250',
    expansionPerMillionCelsius: remembered(10, 11.7, 'EN 1561'),
    modulusGpa: remembered(103, 118, 'EN 1561'),
    poisson: remembered(0.26, 0.26, 'EN 1561'),
    tensileMpa: figure(155, 250, 'EN 1561', {
      note: 'breaks without yielding: the tensile strength stands in; a wall of 80 mm low, of 10 mm high',
    }),
    ...speedsOf('gjl-250'),
  },
];

/** Every material there is, whichever shop names it. */
export const materials: readonly Material[] = [...bookMaterials, ...europeanMetals];

/** The shop's own names first: European ones where lengths are millimetres, the books' where they are inches. */
export function materialsFor(unit: 'in' | 'mm'): readonly Material[] {
  return unit === 'mm' ? [...europeanMetals, ...bookMaterials] : materials;
}

export function materialNamed(id: string | undefined): Material | undefined {
  return materials.find((material) => material.id === id);
}
