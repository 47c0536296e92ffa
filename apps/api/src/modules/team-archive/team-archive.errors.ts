import { Refusal, type FieldProblem } from '../../platform/errors/refusal.js';

/** More would help nobody. */
export const MAX_REPORTED_PROBLEMS = 100;

export class NotAnArchive extends Refusal {
  constructor(why: string) {
    super('team-archive.unreadable', 'malformed', why);
  }
}

export class ArchiveRefused extends Refusal {
  constructor(problems: readonly FieldProblem[]) {
    const count =
      problems.length > MAX_REPORTED_PROBLEMS ? `more than ${MAX_REPORTED_PROBLEMS}` : problems.length;
    super(
      'team-archive.refused',
      'invalid',
      `The archive has ${count} problem${count === 1 ? '' : 's'}; nothing of it was taken in.`,
      problems.slice(0, MAX_REPORTED_PROBLEMS),
    );
  }
}
