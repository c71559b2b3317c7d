import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('full sun');
heldOnScreensOf('trouble');
