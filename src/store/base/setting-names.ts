import type { SettingKey } from './records.ts';

/** What each setting is called in a sentence; one that is not here is the tool last used. */
export const SETTING_NAMES: Readonly<Partial<Record<SettingKey, string>>> = {
  shownUnit: 'the unit of the figures',
  decimalMark: 'how decimals are written',
  padSize: 'the size of the keypad',
  light: 'the light',
  dial: 'the dial of the lathe',
  lathe: 'the speeds of the lathe',
  mill: 'the dials of the mill',
  fitter: 'who signs',
  shopName: 'the name of the shop',
  currency: 'the sign of money',
  sayAloud: 'what is read out',
  lastPlace: 'the place last opened',
  lastChart: 'the chart last opened',
};
