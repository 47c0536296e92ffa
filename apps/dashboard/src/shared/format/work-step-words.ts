import type { components } from '../http/generated/schema.js';
import { formatCount, formatNumber, pressureText } from './numbers.js';

type Step = components['schemas']['WorkStepDto'];
/** A step with the figures it needs, those of a proposal too, which is no order yet. */
export type StepFigures = Pick<Step, 'step'> &
  Partial<
    Pick<Step, 'pressurePsi' | 'spacersChange' | 'spacersThen' | 'clicksFrom' | 'clicksTo' | 'capTorqueNm'>
  >;

/** Steps that hurt somebody where they are left out or done in another order. */
export const CAUTIONS: ReadonlySet<Step['step']> = new Set(['release-air', 'open-cap', 'ride-slowly']);

const WORDS: Record<Step['step'], (figures: StepFigures) => string> = {
  'write-down': () => 'Write down what is in it, clicks too, to be able to go back.',
  'mount-unit': () =>
    'Mount the unit, or find out what is in it: nothing is known of what it is filled with.',
  'release-air': () =>
    'Let all air out before the cap is opened: hold the valve open, press the unit slowly in and let it come back, ' +
    'and hold it open again until nothing more comes.',
  'open-cap': () => 'Open the cap with a socket of the right size, flat-faced and fully seated.',
  'move-spacers': ({ spacersChange, spacersThen }) => {
    const count = formatCount(Math.abs(spacersChange ?? 0), 'spacer');
    const way = (spacersChange ?? 0) > 0 ? `Put ${count} in` : `Take ${count} out`;
    return `${way}; there are ${spacersThen ?? 0} in it then.`;
  },
  'close-cap': ({ capTorqueNm }) =>
    capTorqueNm == null
      ? 'Start the thread of the cap by hand; tighten it to the torque in the unit’s own manual.'
      : `Start the thread of the cap by hand; tighten it to ${formatNumber(capTorqueNm, 1)} N·m, as the team has entered it.`,
  pump: ({ pressurePsi }) => `Pump to ${pressureText(pressurePsi ?? 0)} at full extension.`,
  cycle: () =>
    'Press it slowly a few times through its first third, so that both chambers find the same pressure; ' +
    'read the gauge again and correct it.',
  'set-rebound': (figures) => clicksWords('rebound', figures),
  'set-compression': (figures) => clicksWords('compression', figures),
  'ride-slowly': () => 'Ride slowly at first. Stop on any hard knock, or where oil or air comes out.',
};

function clicksWords(name: string, { clicksFrom, clicksTo }: StepFigures): string {
  const was = clicksFrom == null ? '' : ` It was at ${clicksFrom}.`;
  return `Set the ${name} to ${formatCount(clicksTo ?? 0, 'click')} from fully closed.${was}`;
}

/** A step of work at a unit in words: the one place where they stand. */
export const stepWords = (figures: StepFigures): string => WORDS[figures.step](figures);
