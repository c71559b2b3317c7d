import { europeanMetals, materials, type MaterialId } from '../../material/tables/materials.ts';

/** What a thread is cut into. Its least strength counts, so that the thread is never called stronger than it is. */
export type ParentMetalId = MaterialId | 'cast-aluminium';

export type ParentMetal = {
  readonly id: ParentMetalId;
  readonly name: string;
  readonly tensileLeastMpa: number;
  readonly source: string;
  readonly ofMetricShop?: true;
};

export const parentMetals: readonly ParentMetal[] = [
  {
    id: 'cast-aluminium',
    name: 'Cast aluminium (356-T6)',
    tensileLeastMpa: 205,
    source: 'ASTM B26, sand cast 356-T6, 30 ksi at least, from memory; a thin or porous casting is weaker',
  },
  ...materials.map((metal): ParentMetal => {
    const { id, name, tensileMpa } = metal;
    return {
      id,
      name,
      tensileLeastMpa: tensileMpa.low,
      source: [tensileMpa.source, tensileMpa.note].filter((text) => text !== undefined).join('; '),
      ...(europeanMetals.includes(metal) && { ofMetricShop: true }),
    };
  }),
];
