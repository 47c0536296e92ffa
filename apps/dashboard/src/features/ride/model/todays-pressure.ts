/** The pressure of one end today, where it was filled somewhere else. */
export interface TodaysPressure {
  /** What to pump to so that it is again as it was filled; null where that is not known or not allowed. */
  readonly pumpToPsi: number | null;
  /** What a gauge shows if nobody has touched it since. */
  readonly leftAlonePsi: number;
  readonly filledAltitudeM: number;
  readonly filledTemperatureC: number;
}
