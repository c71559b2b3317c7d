import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('the first use');
heldOnScreensOf('jobs and readings');
