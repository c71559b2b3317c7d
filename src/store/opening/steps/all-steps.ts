import { createFirstStores } from './create-first-stores.ts';
import { createStoreForSearch } from './create-store-for-search.ts';
import { createStoresAfterTheWorksheet } from './create-stores-after-the-worksheet.ts';
import { createStoresForFiles } from './create-stores-for-files.ts';
import { createStoresForHome } from './create-stores-for-home.ts';
import type { Step } from './step.ts';

/** The database version is the number of steps. A released step is never edited: add the next one, and a fixture with it. */
export const allSteps: readonly Step[] = [
  createFirstStores, // 1  first release
  createStoresAfterTheWorksheet, // 2  cuts, checks, assembly, re-checks, photos, money, signed sheets
  createStoresForFiles, // 3  a file is read aside before it is put in, and taken out again as one
  createStoreForSearch, // 4  jobs are found by any word in them
  createStoresForHome, // 5  a copy at home: what is still to go there, and what is known of it
];
