/**
 * Sine of the sun's height from which an hour's own Rs/Rso tells the cloud; lower, the ratio of two small numbers
 * does not. 0.3 rad. [ASCE2005 eq. 45 and the text to it; from memory]
 */
export const SUN_HIGH_SINE = Math.sin(0.3);
