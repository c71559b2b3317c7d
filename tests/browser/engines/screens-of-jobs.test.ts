import { heldInEachEngine } from './held-in-each-engine.ts';

heldInEachEngine('jobs and readings');
