import { entry } from './entry.js';

/** Cubic pieces through given points, as monotone between them as the points are. */
export interface PiecewiseCubic {
  value(x: number): number;
  slope(x: number): number;
  /** Integral from the first point to x. */
  integral(x: number): number;
}

interface Piece {
  readonly start: number;
  readonly end: number;
  /** Coefficients of the value in powers of x − start. */
  readonly c0: number;
  readonly c1: number;
  readonly c2: number;
  readonly c3: number;
  /** Integral from the first point to `start`. */
  readonly area: number;
}

/**
 * Monotone piecewise cubic Hermite interpolation of Fritsch and Carlson (1980) with the slopes of
 * Fritsch and Butland (1984): docs/equations/numerics.md#monotone-cubic. Points must be at least two, with
 * strictly rising x. Outside the points the first and the last piece go on.
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): PiecewiseCubic {
  const slopes = pointSlopes(x, y);
  const pieces: Piece[] = [];
  let area = 0;
  for (let i = 0; i + 1 < x.length; i++) {
    const start = entry(x, i);
    const width = entry(x, i + 1) - start;
    const c0 = entry(y, i);
    const c1 = entry(slopes, i);
    const chord = (entry(y, i + 1) - c0) / width;
    const c2 = (3 * chord - 2 * c1 - entry(slopes, i + 1)) / width;
    const c3 = (c1 + entry(slopes, i + 1) - 2 * chord) / width ** 2;
    const piece = { start, end: start + width, c0, c1, c2, c3, area };
    pieces.push(piece);
    area += pieceIntegral(piece, width);
  }
  const first = entry(pieces, 0);
  // Positions come in small steps, so the piece used last is nearly always the right one again.
  let last = first;
  const find = (position: number): Piece => {
    if (position >= last.start && position < last.end) return last;
    last = pieces.findLast((piece) => piece.start <= position) ?? first;
    return last;
  };
  return {
    value(position) {
      const { start, c0, c1, c2, c3 } = find(position);
      const d = position - start;
      return c0 + d * (c1 + d * (c2 + d * c3));
    },
    slope(position) {
      const { start, c1, c2, c3 } = find(position);
      const d = position - start;
      return c1 + d * (2 * c2 + 3 * d * c3);
    },
    integral(position) {
      const piece = find(position);
      return piece.area + pieceIntegral(piece, position - piece.start);
    },
  };
}

function pieceIntegral({ c0, c1, c2, c3 }: Piece, d: number): number {
  return d * (c0 + d * (c1 / 2 + d * (c2 / 3 + (d * c3) / 4)));
}

/** Slopes at the points: weighted harmonic means of the neighbouring chords, 0 at a turn. */
function pointSlopes(x: readonly number[], y: readonly number[]): number[] {
  const widths = x.slice(1).map((right, i) => right - entry(x, i));
  const chords = widths.map((width, i) => (entry(y, i + 1) - entry(y, i)) / width);
  const last = chords.length - 1;
  if (last === 0) return [entry(chords, 0), entry(chords, 0)];
  const inner = chords.slice(1).map((right, i) => {
    const left = entry(chords, i);
    if (left * right <= 0) return 0;
    const wLeft = 2 * entry(widths, i + 1) + entry(widths, i);
    const wRight = entry(widths, i + 1) + 2 * entry(widths, i);
    return (wLeft + wRight) / (wLeft / left + wRight / right);
  });
  return [
    endSlope(entry(widths, 0), entry(widths, 1), entry(chords, 0), entry(chords, 1)),
    ...inner,
    endSlope(entry(widths, last), entry(widths, last - 1), entry(chords, last), entry(chords, last - 1)),
  ];
}

/** Three-point slope at an end, limited so that the piece next to it stays monotone. */
function endSlope(width: number, nextWidth: number, chord: number, nextChord: number): number {
  const slope = ((2 * width + nextWidth) * chord - width * nextChord) / (width + nextWidth);
  if (slope * chord <= 0) return 0;
  const LARGEST_MONOTONE = 3 * chord;
  return chord * nextChord <= 0 && Math.abs(slope) > Math.abs(LARGEST_MONOTONE) ? LARGEST_MONOTONE : slope;
}
