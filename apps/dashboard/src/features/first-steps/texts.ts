import type { StepName } from './model/steps.js';

const TITLE: Record<StepName, string> = {
  rider: 'A rider',
  fork: 'A fork',
  shock: 'A shock',
  bike: 'A bike',
  track: 'A track',
  setup: 'What is in the bike now',
  run: 'A first run',
};

const LEAD: Record<StepName, string> = {
  rider: 'Name and mass ready to ride: clothes, protectors, pack and water. The rest has usual values.',
  fork: 'Start from generic values of its travel, then enter the limits of its own manual: lowest and highest pressure, and the most spacers. Nothing is ever recommended outside them.',
  shock: 'The same for the shock.',
  bike: 'Start from usual figures of its kind. Everything is marked assumed until you measure it; answers say what they assume.',
  track: 'With the altitude of the place where you set pressures: air is thinner up there.',
  setup: 'Pressures, spacers and clicks as the bike stands there. The reason can be “as found”.',
  run: 'Push the rings down, ride, and enter what they show. Without a run the baseline rests on physics alone, and says so.',
};

export const texts = {
  title: 'First steps',
  lead: 'From nothing to the first baseline in a few minutes. Every figure can be made better later.',
  step: TITLE,
  stepLead: LEAD,
  progress: (done: number, all: number) => `${done} of ${all} done`,
  done: 'Done',
  later: 'Then',
  now: 'Now',
  leftOut: 'left out',
  noShock: 'Our bikes have no air shock',
  withoutRun: 'Go on without a run',
  logRun: 'Log a run',
  importRuns: 'Take in a notebook',
  seeBaseline: 'See the baseline',
  all: 'All there',
  allLead:
    'The first baseline is ready: what to fill for this rider on this bike on this track, why, and how sure it is. From here on runs and measured units make it sharper.',
  onlyMechanic: 'The mechanic of the team enters this.',
  none: 'none',
  revision: (number: number) => `revision ${number}`,
  runs: (count: number) => (count === 1 ? 'one run' : `${count} runs`),
};
