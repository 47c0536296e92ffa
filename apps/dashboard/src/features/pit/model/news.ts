import type { TeamChange } from '../../../shared/live/change-line.js';
import { texts } from '../texts.js';

/** What is said of a change, the most telling first: a new set-up comes with a decision, and is said once. */
const SAID = ['run', 'setup', 'decision', 'plan'] as const;

/** What was changed at which bike, in a sentence to be heard; nothing of what is not a bike's. */
export function newsOf(
  changes: readonly TeamChange[],
  bikeName: (id: string) => string | undefined,
): string | null {
  const sentences = [...new Set(changes.map(({ bikeId }) => bikeId))].flatMap((bikeId) => {
    const name = bikeId === null ? undefined : bikeName(bikeId);
    const kind = SAID.find((said) =>
      changes.some((change) => change.bikeId === bikeId && change.kind === said),
    );
    return name === undefined || kind === undefined ? [] : [texts.news[kind](name)];
  });
  return sentences.length === 0 ? null : sentences.join(' ');
}
