/** One ring reading as a hit height, m. Near full travel it is 'atLeast', below sudden load 'atMost'. */
export interface DemandReading {
  readonly id: string;
  readonly heightM: number;
  readonly kind: 'exact' | 'atLeast' | 'atMost';
  readonly voided: boolean;
  /** What hover and focus tell: run, set-up, day. */
  readonly label: string;
  /** How the reading sits among the others; null where the model does not count it. */
  readonly standing: Standing | null;
}

/** How probable a reading was (0 to 1), and what it does to the level of its rider here (log; null for a bound). */
export interface Standing {
  readonly chance: number;
  readonly pull: number | null;
  readonly surprising: boolean;
}

export interface DemandRow {
  readonly key: string;
  readonly label: string;
  readonly readings: readonly DemandReading[];
  /** Where the next run of this rider here is expected to fall. */
  readonly predictive?:
    { readonly lowM: number; readonly medianM: number; readonly highM: number } | undefined;
  /** The hit at which each set-up of this rider would bottom out. */
  readonly bottomsAt: readonly { readonly heightM: number; readonly label: string }[];
}

export interface LogScale {
  readonly fromM: number;
  readonly toM: number;
  readonly widthPx: number;
}

/** A dot on the strip: where it stands, and in which lane so that it hides no other. */
export interface PlacedReading {
  readonly reading: DemandReading;
  readonly xPx: number;
  /** 0 is the middle of the row; lanes alternate above and below. */
  readonly lane: number;
}

/** Room left and right of the outermost value, as a factor of height. */
const MARGIN_FACTOR = 1.25;
/** Dots in one lane stand at least this far apart, px. */
const DOT_ROOM_PX = 11;
/** Shown when nothing has been read yet, m. */
const EMPTY_FROM_M = 0.1;
const EMPTY_TO_M = 2;
const WIDE_STEPS = [1, 2, 5];
const NARROW_STEPS = [1, 1.5, 2, 3, 4, 5, 6, 8];
/** A scale that spans less than this ratio gets the finer steps. */
const NARROW_RATIO = 12;
const TICK_ROOM_PX = 44;

/** A log scale that holds every reading, band and bottoming height of the rows. */
export function scaleFor(rows: readonly DemandRow[], widthPx: number): LogScale {
  const heights = rows
    .flatMap((row) => [
      ...row.readings.map((reading) => reading.heightM),
      row.predictive?.lowM,
      row.predictive?.highM,
      ...row.bottomsAt.map(({ heightM }) => heightM),
    ])
    .filter((height): height is number => height !== undefined && Number.isFinite(height) && height > 0);
  if (heights.length === 0) return { fromM: EMPTY_FROM_M, toM: EMPTY_TO_M, widthPx };
  return {
    fromM: Math.min(...heights) / MARGIN_FACTOR,
    toM: Math.max(...heights) * MARGIN_FACTOR,
    widthPx,
  };
}

/** Pixels from the left end of the strip for a height, m; what is outside stands at the end. */
export function toPixels(scale: LogScale, heightM: number): number {
  const share = Math.log(heightM / scale.fromM) / Math.log(scale.toM / scale.fromM);
  return Math.min(Math.max(share, 0), 1) * scale.widthPx;
}

/** Heights for the axis: round ones of each decade, where they have room. */
export function axisTicks(scale: LogScale): number[] {
  const firstDecade = Math.floor(Math.log10(scale.fromM));
  const lastDecade = Math.ceil(Math.log10(scale.toM));
  const steps = scale.toM / scale.fromM < NARROW_RATIO ? NARROW_STEPS : WIDE_STEPS;
  const ticks: number[] = [];
  for (let decade = firstDecade; decade <= lastDecade; decade += 1)
    for (const step of steps) {
      const height = Number((step * 10 ** decade).toPrecision(2));
      const previous = ticks.at(-1);
      const hasRoom =
        previous === undefined || toPixels(scale, height) - toPixels(scale, previous) >= TICK_ROOM_PX;
      if (height >= scale.fromM && height <= scale.toM && hasRoom) ticks.push(height);
    }
  return ticks;
}

/** Words in as few lines of so many characters as hold them; a longer word has a line to itself. */
export function linesWithin(words: string, characters: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= characters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Puts the readings of a row into lanes, so that no dot hides another; left to right. */
export function placeReadings(readings: readonly DemandReading[], scale: LogScale): PlacedReading[] {
  const laneEnds: number[] = [];
  return [...readings]
    .sort((a, b) => a.heightM - b.heightM)
    .map((reading) => {
      const xPx = toPixels(scale, reading.heightM);
      const free = laneEnds.findIndex((end) => xPx - end >= DOT_ROOM_PX);
      const index = free === -1 ? laneEnds.length : free;
      laneEnds[index] = xPx;
      const distance = Math.ceil(index / 2);
      return { reading, xPx, lane: index % 2 === 1 ? -distance : distance };
    });
}
