import { parseNumber } from '../../../shared/format/parse.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';

export type LeverageTable = Bike['leverageTable'];

/** A leverage table as it is typed: a line for each point, shock travel and ratio apart by space, tab or semicolon. */
export function leverageText(table: LeverageTable): string {
  return table.map(({ shockTravelMm, leverageRatio }) => `${shockTravelMm} ${leverageRatio}`).join('\n');
}

/** Reads a typed leverage table; names the first line that is none. */
export function readLeverage(text: string): { table: LeverageTable } | { badLine: number } {
  const table: LeverageTable = [];
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const [travel, ratio, ...rest] = line
      .trim()
      .split(/[\s;]+/)
      .map(parseNumber);
    if (!isFigure(travel) || !isFigure(ratio) || rest.length > 0) return { badLine: index + 1 };
    table.push({ shockTravelMm: travel, leverageRatio: ratio });
  }
  return { table };
}

const isFigure = (value: number | null | undefined): value is number =>
  value !== null && value !== undefined && !Number.isNaN(value);
