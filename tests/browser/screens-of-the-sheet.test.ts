import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('sheet, charts, drawer and shop');
heldOnScreensOf('fit-up');
