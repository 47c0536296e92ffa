import { REFERENCE_CONDITION, type DemandReading } from './reading.js';

/** A rider and a track with readings, by index. */
interface DesignPair {
  track: number;
  rider: number;
  /** In a row: each is one more than the one before. */
  cells: readonly number[];
  /** Ground of each cell, an index of the conditions; −1 is the reference ground. */
  grounds: readonly number[];
}

/** A cell with bounds: the rows `first` … `last` − 1 of DemandDesign.bounds. */
export interface BoundedCell {
  cell: number;
  first: number;
  last: number;
}

/** The readings of a team sorted into cells (one rider on one track and ground), as flat arrays for the inner loops. */
export interface DemandDesign {
  /** Sorted, so that the result does not depend on the order of the readings. */
  tracks: readonly string[];
  riders: readonly string[];
  /** Kinds of ground other than the reference. */
  conditions: readonly string[];
  /** Track index of every cell. */
  cellTrack: Int32Array;
  /** Pairs of a rider and a track with readings, with their cells: one a ground. */
  pairs: readonly DesignPair[];
  /** Pair index of every cell. */
  cellPair: Int32Array;
  /** Unknowns that add up to a cell's level: mu (0), its track, its rider and, off the reference ground, its condition, ascending. */
  cellUnknowns: readonly Int32Array[];
  /** Where these lists lie one behind the other, MOST_UNKNOWNS places each. */
  packedUnknowns: Int32Array;
  exact: { cell: Int32Array; value: Float64Array; variance: Float64Array };
  /** Bounds ordered by cell. `side` is 1 for a lower bound and −1 for an upper bound. */
  bounds: { cell: Int32Array; limit: Float64Array; variance: Float64Array; side: Int8Array };
  boundedCells: readonly BoundedCell[];
}

/** Of one cell: mu, its track, its rider and its condition. */
export const MOST_UNKNOWNS = 4;

const distinct = (ids: Iterable<string>): string[] => [...new Set(ids)].sort();

const groundOf = (reading: DemandReading): string => reading.condition ?? REFERENCE_CONDITION;

const indexOf = (ids: readonly string[]): Map<string, number> => new Map(ids.map((id, index) => [id, index]));

/** Sorts readings into cells; values and limits in log metres, variances of the reading error in (log m)². */
export function designOf(readings: readonly DemandReading[]): DemandDesign {
  const tracks = distinct(readings.map((reading) => reading.trackId));
  const riders = distinct(readings.map((reading) => reading.riderId));
  const conditions = distinct(readings.map(groundOf)).filter((ground) => ground !== REFERENCE_CONDITION);
  const trackIndex = indexOf(tracks);
  const riderIndex = indexOf(riders);
  const groundIndex = indexOf([REFERENCE_CONDITION, ...conditions]);
  const grounds = conditions.length + 1;
  const cellNumber = (reading: DemandReading): number => {
    const pair =
      (trackIndex.get(reading.trackId) ?? 0) * riders.length + (riderIndex.get(reading.riderId) ?? 0);
    return pair * grounds + (groundIndex.get(groundOf(reading)) ?? 0);
  };

  const used = [...new Set(readings.map(cellNumber))].sort((a, b) => a - b);
  const cellOf = new Map(used.map((number, cell) => [number, cell]));
  const trackOf = (number: number): number => Math.floor(number / (riders.length * grounds));
  const riderOf = (number: number): number => Math.floor(number / grounds) % riders.length;
  const unknownsOfNumber = (number: number): number[] => {
    const rider = riderOf(number);
    const ground = number % grounds;
    const firstCondition = 1 + tracks.length + riders.length;
    const three = [0, 1 + trackOf(number), 1 + tracks.length + rider];
    return ground === 0 ? three : [...three, firstCondition + ground - 1];
  };
  const pairs: { track: number; rider: number; cells: number[]; grounds: number[] }[] = [];
  const cellPair = Int32Array.from(used, (number, cell) => {
    const [track, rider] = [trackOf(number), riderOf(number)];
    let last = pairs.at(-1);
    if (last?.track !== track || last.rider !== rider) {
      last = { track, rider, cells: [], grounds: [] };
      pairs.push(last);
    }
    last.cells.push(cell);
    last.grounds.push((number % grounds) - 1);
    return pairs.length - 1;
  });
  const rows = readings
    .map((reading) => ({ reading, cell: cellOf.get(cellNumber(reading)) ?? 0 }))
    .sort(
      (a, b) =>
        a.cell - b.cell ||
        a.reading.logHeight - b.reading.logHeight ||
        a.reading.readingSd - b.reading.readingSd,
    );
  const exact = rows.filter(({ reading }) => reading.kind === 'exact');
  const bounds = rows.filter(({ reading }) => reading.kind !== 'exact');
  const varianceOf = ({ reading }: { reading: DemandReading }): number => reading.readingSd ** 2;
  return {
    tracks,
    riders,
    conditions,
    cellTrack: Int32Array.from(used, trackOf),
    pairs,
    cellPair,
    ...packed(used.map(unknownsOfNumber)),
    exact: {
      cell: Int32Array.from(exact, ({ cell }) => cell),
      value: Float64Array.from(exact, ({ reading }) => reading.logHeight),
      variance: Float64Array.from(exact, varianceOf),
    },
    bounds: {
      cell: Int32Array.from(bounds, ({ cell }) => cell),
      limit: Float64Array.from(bounds, ({ reading }) => reading.logHeight),
      variance: Float64Array.from(bounds, varianceOf),
      side: Int8Array.from(bounds, ({ reading }) => (reading.kind === 'at-least' ? 1 : -1)),
    },
    boundedCells: boundedCellsOf(bounds),
  };
}

/** The unknowns of all cells in one array, for the inner loops, and each cell's as a view of it. */
function packed(unknowns: readonly number[][]): Pick<DemandDesign, 'cellUnknowns' | 'packedUnknowns'> {
  const packedUnknowns = new Int32Array(MOST_UNKNOWNS * unknowns.length);
  const cellUnknowns = unknowns.map((list, cell) => {
    const first = MOST_UNKNOWNS * cell;
    packedUnknowns.set(list, first);
    return packedUnknowns.subarray(first, first + list.length);
  });
  return { cellUnknowns, packedUnknowns };
}

/** Runs of one cell among rows that are ordered by cell. */
function boundedCellsOf(rows: readonly { cell: number }[]): BoundedCell[] {
  const cells: BoundedCell[] = [];
  for (const [row, { cell }] of rows.entries()) {
    const last = cells.at(-1);
    if (last?.cell === cell) last.last = row + 1;
    else cells.push({ cell, first: row, last: row + 1 });
  }
  return cells;
}

/** Number of unknowns: mu, one effect a track, a rider and a condition, in this order. */
export const unknownsOf = (design: DemandDesign): number =>
  1 + design.tracks.length + design.riders.length + design.conditions.length;

/** What the exact readings say about the level of every cell when the run sd is given. */
export interface ExactSums {
  /** Σ 1/(s²+r²) and Σ (y − centre)/(s²+r²) of every cell. */
  precision: Float64Array;
  shift: Float64Array;
  /** Σ −½ log(2π(s²+r²)) − ½ (y − centre)²/(s²+r²). */
  constant: number;
}

const LOG_2PI = Math.log(2 * Math.PI);

/** Sums over the exact readings for a run sd (log m), with values counted from `centre` (log m). */
export function exactSums(design: DemandDesign, runSd: number, centre: number): ExactSums {
  const precision = new Float64Array(design.cellTrack.length);
  const shift = new Float64Array(design.cellTrack.length);
  const { cell, value, variance } = design.exact;
  let constant = 0;
  for (let i = 0; i < cell.length; i += 1) {
    const total = runSd * runSd + (variance[i] as number);
    const y = (value[i] as number) - centre;
    const c = cell[i] as number;
    precision[c] = (precision[c] as number) + 1 / total;
    shift[c] = (shift[c] as number) + y / total;
    constant -= 0.5 * (LOG_2PI + Math.log(total) + (y * y) / total);
  }
  return { precision, shift, constant };
}
