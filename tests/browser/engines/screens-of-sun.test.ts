import { heldInEachEngine } from './held-in-each-engine.ts';

heldInEachEngine('full sun');
