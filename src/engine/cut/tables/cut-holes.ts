import { lengthOf, type Length } from '../../length/length.ts';

/** Less than this a reamer burnishes: War Department TM 1-420, paragraph 37 (drilled to within .005 or .010 in). */
export const leastReamed: Length = lengthOf('.005 in');

/** A drill over this size follows a smaller one, so that its web finds no metal. Common practice, no source. */
export const pilotFrom: Length = lengthOf('.500 in');
