import type { Dial } from '../../engine/length/metal-on.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The shop's dial as the engine asks for it. */
export function dialOf({ dial }: Pick<WorksheetData, 'dial'>): Dial {
  return { reads: dial.reads, graduation: dial.graduation.exact };
}
