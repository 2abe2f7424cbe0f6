/** Weight and mass. */

/** Standard acceleration of free fall in m/s², by convention (3rd General Conference on Weights and Measures, 1901). */
export const STANDARD_GRAVITY = 9.80665;
