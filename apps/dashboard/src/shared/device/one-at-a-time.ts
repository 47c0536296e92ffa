/**
 * Runs `work` in one tab of this browser at a time; the others wait their turn. A browser has locks on a secure
 * address only: on a plain one of the local network the work runs at once, and what it sends must be safe to repeat.
 */
export function oneAtATime<Answer>(name: string, work: () => Promise<Answer>): Promise<Answer> {
  const locks = (navigator as { locks?: LockManager }).locks;
  return locks === undefined ? work() : locks.request(`loamledger-${name}`, work);
}
