import { beginOpening, USUAL_NAME } from './open-database.ts';
import { allSteps } from './steps/all-steps.ts';

// Imported before anything else: the browser brings the database up from the disk while the rest of the app is still being
// evaluated. `openStore` takes the opening over.
beginOpening({ name: USUAL_NAME, steps: allSteps });
