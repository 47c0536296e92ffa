/** How far an order is from being balanced against trends; 0 is perfect. */
export interface OrderImbalance {
  /** Spread of the arms' mean places, in squared runs. */
  linear: number;
  /** Spread of the arms' mean squared distances from the middle, in runs to the fourth. */
  quadratic: number;
}

/** The runs of one arm: how many, and the sums of their trend terms. */
export interface PlaceSums {
  runs: number;
  first: number;
  second: number;
}

/** Trend terms of places in a session: distances from their middle, in runs, and the squares of these less their mean. */
export interface TrendTerms {
  first: readonly number[];
  second: readonly number[];
}

/** The trend terms of places in one session. */
export function trendTerms(positions: readonly number[]): TrendTerms {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  const centre = mean(positions);
  const first = positions.map((position) => position - centre);
  const square = mean(first.map((o) => o * o));
  return { first, second: first.map((o) => o * o - square) };
}

/** Sums of the trend terms over the runs of each arm, by its number; `order` are arm numbers, below `arms`. */
export function placeSums(arms: number, order: readonly number[], terms: TrendTerms): PlaceSums[] {
  const sums = Array.from({ length: arms }, () => ({ runs: 0, first: 0, second: 0 }));
  for (let i = 0; i < order.length; i += 1) {
    const sum = sums[order[i] as number] as PlaceSums;
    sum.runs += 1;
    sum.first += terms.first[i] as number;
    sum.second += terms.second[i] as number;
  }
  return sums;
}

/** The sums of two sets of runs together, each with its own trend terms. */
export const addedUp = (some: readonly PlaceSums[], others: readonly PlaceSums[]): PlaceSums[] =>
  some.map(({ runs, first, second }, arm) => {
    const other = others[arm] as PlaceSums;
    return { runs: runs + other.runs, first: first + other.first, second: second + other.second };
  });

/** The sums of a whole session by the order of the runs that are still to be ridden: `ridden` ones count, `places` are of the rest. */
export function sessionSums(
  arms: number,
  ridden: readonly { arm: number; position: number }[],
  places: readonly number[],
): (order: readonly number[]) => PlaceSums[] {
  const terms = trendTerms([...ridden.map(({ position }) => position), ...places]);
  const done = placeSums(
    arms,
    ridden.map(({ arm }) => arm),
    terms,
  );
  const rest = { first: terms.first.slice(ridden.length), second: terms.second.slice(ridden.length) };
  return (order) => addedUp(done, placeSums(arms, order, rest));
}

/** Spread over the arms that have runs: an order is free of a linear (quadratic) trend when the first (both) are 0 (cox1951). */
export function spreadOf(sums: readonly PlaceSums[]): OrderImbalance {
  let linear = 0;
  let quadratic = 0;
  for (const { runs, first, second } of sums) {
    if (runs === 0) continue;
    linear += (first / runs) ** 2;
    quadratic += (second / runs) ** 2;
  }
  return { linear, quadratic };
}

/** A linear trend is usual and a quadratic one is not, so the first is balanced first: weight in runs². */
const LINEAR_WEIGHT = 1e3;

/** What a search makes smallest, in runs to the fourth. */
export const trendCost = ({ linear, quadratic }: OrderImbalance): number =>
  LINEAR_WEIGHT * linear + quadratic;
