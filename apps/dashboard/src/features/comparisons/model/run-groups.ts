import type { Compared, RunPoint } from '../api/comparison.js';

/** What tells one arm, or set-up, from another. */
export const keyOf = ({ letter, setupId }: Pick<Compared, 'letter' | 'setupId'>): string =>
  letter ?? setupId ?? '';

/** The runs of one rider in one session: one picture. */
interface RunGroup {
  readonly riderId: string;
  /** 1, 2, 3 … of the rider's sessions. */
  readonly session: number;
  readonly points: readonly RunPoint[];
}

/** Runs by rider and session, each in the order of riding. */
export function runGroups(points: readonly RunPoint[]): RunGroup[] {
  const groups = new Map<string, RunPoint[]>();
  for (const point of points) {
    const key = `${point.riderId} ${point.sessionId}`;
    groups.set(key, [...(groups.get(key) ?? []), point]);
  }
  const sessions = new Map<string, number>();
  return [...groups.values()].map((own) => {
    const riderId = own[0]?.riderId ?? '';
    const session = (sessions.get(riderId) ?? 0) + 1;
    sessions.set(riderId, session);
    return { riderId, session, points: own.toSorted((a, b) => a.position - b.position) };
  });
}

/** The fitted times of one arm along its places, as far as they are known. */
export const fittedLine = (points: readonly RunPoint[], key: string): { place: number; timeS: number }[] =>
  points.flatMap((point) =>
    keyOf(point) === key && point.fittedS !== null ? [{ place: point.position, timeS: point.fittedS }] : [],
  );

/** The trend: the time that the current arm would have had at each place. */
export const trendLine = (points: readonly RunPoint[]): { place: number; timeS: number }[] =>
  points.flatMap(({ position, trendS }) => (trendS === null ? [] : [{ place: position, timeS: trendS }]));
