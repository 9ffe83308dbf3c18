/** Spread of a careful test between methods and repeats, points of volume. [SOTO2022: 0.023 between three methods] */
export const TEST_SPREAD_FRAC = 0.03;
