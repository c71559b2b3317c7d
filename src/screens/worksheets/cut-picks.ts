import type { CutOffer } from '../../engine/cut/cut.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { materialNamed, type MaterialId } from '../../engine/material/tables/materials.ts';
import type { Cut, Machine } from '../../store/base/records.ts';
import { MACHINES, usualMachine } from '../cuts/cut-words.ts';

/** What was tapped on the cuts of a worksheet before they go on the list: kept as a draft, so plain words one behind the other. */
export type CutPicks = readonly string[];

export function readPicks(text: string): CutPicks {
  return text.split(' ').filter((word) => word !== '');
}

export function picksText(picks: CutPicks): string {
  return picks.join(' ');
}

/** A cut of a way has no id of its own: its place in the order of work is what it is known by. */
export type CutPlace = { readonly way: CutWay; readonly index: number };

/** Every cut of a way is taken until it is left out. */
export function isTaken(picks: CutPicks, { way, index }: CutPlace): boolean {
  return !picks.includes(leftOut({ way, index }));
}

export function withTaken(picks: CutPicks, place: CutPlace): CutPicks {
  const word = leftOut(place);
  return picks.includes(word) ? picks.filter((one) => one !== word) : [...picks, word];
}

export function machineOf(picks: CutPicks, place: CutPlace): Machine {
  const chosen = valueOf(picks, machineWord(place));
  return MACHINES.find((one) => one === chosen) ?? usualMachine(offerAt(place));
}

export function withMachine(picks: CutPicks, place: CutPlace, machine: Machine): CutPicks {
  return withValue(picks, machineWord(place), machine);
}

/** A part is of one material, whichever of its cuts it was said at. */
export function materialOf(picks: CutPicks, place: CutPlace): MaterialId | undefined {
  const offer = offerAt(place);
  return materialNamed(valueOf(picks, materialWord(offer)))?.id ?? offer.material;
}

export function withMaterial(picks: CutPicks, place: CutPlace, material: MaterialId): CutPicks {
  return withValue(picks, materialWord(offerAt(place)), material);
}

/** Whether it was tapped here what a part is made of. */
export function isMaterialSaid(picks: CutPicks, offer: Pick<CutOffer, 'part'>): boolean {
  return valueOf(picks, materialWord(offer)) !== undefined;
}

/** What a part is made of was said at an earlier cut of it: taken over until it is said otherwise. */
export function withKnownMaterials(
  picks: CutPicks,
  cuts: readonly Pick<Cut, 'part' | 'material'>[],
): CutPicks {
  const known = cuts.flatMap(({ part, material }) =>
    material !== undefined && valueOf(picks, materialWord({ part })) === undefined
      ? [{ part, material }]
      : [],
  );
  return known.reduce(
    (all: CutPicks, { part, material }) => withValue(all, materialWord({ part }), material),
    picks,
  );
}

function leftOut({ way, index }: CutPlace): string {
  return `left/${encodeURIComponent(way.id)}/${index}`;
}

function machineWord({ way, index }: CutPlace): string {
  return `machine/${encodeURIComponent(way.id)}/${index}`;
}

function materialWord({ part }: Pick<CutOffer, 'part'>): string {
  return `material/${encodeURIComponent(part)}`;
}

function offerAt({ way, index }: CutPlace): CutOffer {
  const offer = way.offers[index];
  if (!offer) throw new Error(`way ${way.id} has no cut ${index}`);
  return offer;
}

function valueOf(picks: CutPicks, word: string): string | undefined {
  return picks.find((one) => one.startsWith(`${word}=`))?.slice(word.length + 1);
}

function withValue(picks: CutPicks, word: string, value: string): CutPicks {
  return [...picks.filter((one) => !one.startsWith(`${word}=`)), `${word}=${value}`];
}
