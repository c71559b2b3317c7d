import { heldOnScreensOf } from './held-on-screens.ts';

heldOnScreensOf('cuts');
heldOnScreensOf('the lathe');
