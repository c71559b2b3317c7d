/** What a signed sheet is about. Not the money and the photos on it: they say nothing of how the job was built. */
export const signedStores = [
  'jobs',
  'parts',
  'features',
  'readings',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
] as const;

export type SignedStore = (typeof signedStores)[number];
