import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('worksheets');
