/** Of the standard normal distribution; its table's values (Abramowitz and Stegun, table 26.5; from memory). */

/** 0.9 quantile: P90 lies so many standard deviations above the middle, P10 as many below */
export const z90 = 1.2815515655;
/** standard deviations from P10 to P90 */
export const p10To90 = 2 * z90;
