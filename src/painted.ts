import { drawPainted } from './screens/jobs/painted-list.ts';

/** A small script before all others: the list of jobs as it was painted last, until the app draws it as it is. */
if (/^(?:#\/(?:jobs)?)?$/.test(location.hash) && location.search === '') drawPainted();
