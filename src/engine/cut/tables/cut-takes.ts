import { lengthOf, type Length } from '../../length/length.ts';
import type { CuttingTool, Operation } from '../cut.ts';
import type { BookMaterialId } from '../../material/tables/materials.ts';

export const TAKES_SOURCE = 'common practice, no source; change it to what your lathe and tool can do';

/** Depths of cut, so one side of a diameter. */
export type Depths = {
  readonly largest: Length;
  /** Less than this rubs; more where the metal hardens under a tool that rubs. */
  readonly least: Length;
  /** Left for the last two passes together. */
  readonly finish: Length;
};

function depths(largest: string, least: string, finish: string): Depths {
  return {
    largest: lengthOf(`${largest} in`),
    least: lengthOf(`${least} in`),
    finish: lengthOf(`${finish} in`),
  };
}

/**
 * For turning outside, on a bench lathe of some 9 to 13 in swing. Common practice, no source: a sharp high-speed edge
 * shaves half a thou off steel, a carbide insert's honed edge wants three or four; 300 stainless and titanium harden
 * where they are rubbed, and want two and more with either.
 */
export const turningDepths: Readonly<Record<CuttingTool, Readonly<Record<BookMaterialId, Depths>>>> = {
  hss: {
    'low-carbon-steel': depths('.050', '.0005', '.006'),
    'alloy-steel': depths('.040', '.001', '.006'),
    'stainless-303': depths('.030', '.002', '.008'),
    'stainless-304': depths('.025', '.003', '.010'),
    'aluminium-6061': depths('.080', '.0005', '.006'),
    'aluminium-7075': depths('.080', '.0005', '.006'),
    'brass-360': depths('.080', '.0005', '.006'),
    'bearing-bronze': depths('.060', '.0005', '.006'),
    'cast-iron': depths('.050', '.001', '.008'),
    'titanium-6-4': depths('.025', '.003', '.010'),
    acetal: depths('.080', '.001', '.010'),
  },
  carbide: {
    'low-carbon-steel': depths('.060', '.003', '.012'),
    'alloy-steel': depths('.050', '.003', '.012'),
    'stainless-303': depths('.040', '.004', '.012'),
    'stainless-304': depths('.035', '.005', '.012'),
    'aluminium-6061': depths('.100', '.002', '.010'),
    'aluminium-7075': depths('.100', '.002', '.010'),
    'brass-360': depths('.100', '.002', '.010'),
    'bearing-bronze': depths('.080', '.002', '.010'),
    'cast-iron': depths('.060', '.003', '.012'),
    'titanium-6-4': depths('.030', '.005', '.012'),
    acetal: depths('.100', '.002', '.010'),
  },
};

/** Where the material is not known: the most careful of the rows for each figure that can be kept with any of them. */
export const unknownDepths: Readonly<Record<CuttingTool, Depths>> = {
  hss: depths('.025', '.003', '.010'),
  carbide: depths('.030', '.005', '.012'),
};

/**
 * For a thread by a single point: how deep the first pass goes, whose area the others keep to, and the finest of the last
 * ones. Common practice, no source.
 */
export const threadDepths: Depths = depths('.008', '.001', '.003');

/**
 * What is left of the largest depth where the tool or the work gives more than in turning: a boring bar is slender, a
 * facing cut is wide, a ring slips on its mandrel. Common practice, no source.
 */
export const shareOfLargest: Readonly<Record<Operation, string>> = {
  turn: '1',
  face: '0.5',
  bore: '0.5',
  ring: '0.4',
  drill: '1',
  ream: '1',
  tap: '1',
  thread: '1',
};
