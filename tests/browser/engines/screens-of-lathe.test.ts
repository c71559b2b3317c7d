import { heldInEachEngine } from './held-in-each-engine.ts';

heldInEachEngine('the lathe');
