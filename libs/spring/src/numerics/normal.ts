/** Standard normal quantile of 95 %: half width of a 90 % interval in standard uncertainties. */
export const NORMAL_95 = 1.6448536269514722;
