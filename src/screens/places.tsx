import type { ComponentType } from 'preact';
import type { AddressOf, Place } from './address.ts';
import { lazyScreen } from './common/lazy-screen.tsx';
import { JobsScreen } from './jobs/jobs-screen.tsx';
import type { LaterPlace } from './later-places.tsx';

/** What is drawn at each place, given its address. The job list is the first load; the rest is read from the phone when opened. */
export const places: { readonly [At in Place]: ComponentType<AddressOf<At>> } = {
  jobs: JobsScreen,
  'new-job': later('new-job'),
  'new-reading': later('new-reading'),
  find: later('find'),
  job: later('job'),
  route: later('route'),
  again: later('again'),
  readings: later('readings'),
  'new-feature': later('new-feature'),
  known: later('known'),
  feature: later('feature'),
  worksheets: later('worksheets'),
  worksheet: later('worksheet'),
  'all-cuts': later('all-cuts'),
  cuts: later('cuts'),
  cut: later('cut'),
  lathe: later('lathe'),
  'fit-up': later('fit-up'),
  check: later('check'),
  assembly: later('assembly'),
  step: later('step'),
  'sign-off': later('sign-off'),
  money: later('money'),
  photos: later('photos'),
  sheet: later('sheet'),
  charts: lazyScreen(() => import('./charts/charts-screen.tsx').then((file) => file.ChartsScreen)),
  drawer: later('drawer'),
  'new-piece': later('new-piece'),
  piece: later('piece'),
  shop: later('shop'),
  restore: later('restore'),
  tool: later('tool'),
  get: later('get'),
};

function later<At extends LaterPlace>(at: At): ComponentType<AddressOf<At>> {
  return lazyScreen(() => import('./later-places.tsx').then(({ laterPlaces }) => laterPlaces[at]));
}
