/** A mishap that spoils a run. */
interface Mishap {
  readonly reason: string;
  /** The biggest hit was taken as usual, so the rings still tell it. */
  readonly readingsCount: boolean;
  /** The clock was stopped all the same. */
  readonly timed: boolean;
}

/** Why runs of the demo are void. */
export const MISHAPS: readonly [Mishap, ...Mishap[]] = [
  { reason: 'Slid out in a bend and stood still.', readingsCount: false, timed: false },
  { reason: 'Held up by a slower rider in the last third.', readingsCount: true, timed: true },
  { reason: 'Went over a stump off the line; that hit is not the track.', readingsCount: false, timed: true },
  { reason: 'Chain off half-way, rolled to the finish.', readingsCount: true, timed: true },
  { reason: 'Rear tyre lost air before the last section.', readingsCount: false, timed: false },
  { reason: 'Missed a gate and rode back up.', readingsCount: true, timed: true },
];

export const UNTIMED_NOTE = 'Untimed shuttle run.';

export const BOTTOMED_NOTES = [
  'Hit the end hard once.',
  'Used everything on the biggest landing.',
  'Ring at the very end.',
] as const;

export const DEEP_NOTES = ['Deep on the big hit, not harsh.', 'Close to the end, all good.'] as const;

export const SHALLOW_NOTES = [
  'A lot of travel left, a bit harsh on the small stuff.',
  'Never came close to full travel.',
  'Could give up some support.',
] as const;

export const OTHER_NOTES = [
  'Clean run.',
  'Better line through the middle.',
  'Braked too early twice.',
  'Arms tired at the end.',
  'Lost the front for a moment.',
] as const;
