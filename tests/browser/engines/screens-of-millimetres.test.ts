import { heldInEachEngine } from './held-in-each-engine.ts';

heldInEachEngine('millimetres and gloves');
