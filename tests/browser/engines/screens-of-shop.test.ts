import { heldInEachEngine } from './held-in-each-engine.ts';

heldInEachEngine('sheet, charts, drawer and shop');
