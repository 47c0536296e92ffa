/** Where no line may break. */
export const NO_BREAK = '\u00a0';

/** A figure beside its unit, or a count beside what it counts, which no line parts: 18.1 %, 161 mm, 3 spacers, 68.9°. */
export function withUnit(figure: string, unit: string): string {
  if (unit === '') return figure;
  return unit === '°' ? `${figure}°` : `${figure}${NO_BREAK}${unit}`;
}
