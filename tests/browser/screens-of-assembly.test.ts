import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('assembly');
heldOnScreensOf('millimetres and gloves');
