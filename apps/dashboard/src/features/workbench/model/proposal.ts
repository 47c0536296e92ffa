import { parseNumber } from '../../../shared/format/parse.js';
import { nextStep } from '../../../shared/format/entry.js';
import type { Fill, FillField } from './fill.js';
import type { Limits } from './limits.js';

/** What a person has typed or stepped to; null where it is as now. */
export type Proposal = Readonly<Record<FillField, string | null>>;

export const AS_NOW: Proposal = { pressurePsi: null, spacers: null };

/** Why a value cannot be proposed. */
export type Problem =
  'not a number' | 'not whole' | 'below the limit' | 'above the limit' | 'beyond any unit' | 'chamber full';

export interface Checked {
  /** Null while something typed cannot be. */
  readonly fill: Fill | null;
  readonly problems: Readonly<Partial<Record<FillField, Problem>>>;
}

/** What the API takes from any unit: psi by the gauge, and spacers. */
export const ANY_UNIT = { pressurePsi: { least: 5, most: 600 }, spacers: { least: 0, most: 30 } };

/** The proposal in figures, refused where a limit of the unit or of all units is passed. */
export function checkProposal(proposal: Proposal, now: Fill, limits: Limits): Checked {
  const value = (field: FillField) =>
    proposal[field] === null ? now[field] : (parseNumber(proposal[field]) ?? Number.NaN);
  const fill = { pressurePsi: value('pressurePsi'), spacers: value('spacers') };
  const problems = Object.fromEntries(
    (['pressurePsi', 'spacers'] as const).flatMap((field) => {
      const problem = problemOf(field, fill[field], limits);
      return problem === null ? [] : [[field, problem]];
    }),
  );
  return { fill: Object.keys(problems).length === 0 ? fill : null, problems };
}

function problemOf(field: FillField, value: number, limits: Limits): Problem | null {
  if (Number.isNaN(value)) return 'not a number';
  if (field === 'spacers' && !Number.isInteger(value)) return 'not whole';
  const { least, most } = limits[field];
  if (least !== null && value < least) return 'below the limit';
  if (most !== null && value > most) return 'above the limit';
  const any = ANY_UNIT[field];
  return value < any.least || value > any.most ? 'beyond any unit' : null;
}

export type Step = { readonly to: number } | { readonly refused: Problem };

/**
 * One press of a stepper. Pressure goes to the next figure that one pumps to: a whole psi. Only the limit ahead
 * refuses: a value that is outside the other one can be brought back.
 */
export function stepFrom(field: FillField, from: number, by: 1 | -1, limits: Limits): Step {
  const to = field === 'spacers' ? Math.round(from) + by : nextStep('psi', from, by);
  const ahead = by > 0 ? 'most' : 'least';
  const own = limits[field][ahead];
  if (own !== null && (to - own) * by > 0) {
    return { refused: by > 0 ? 'above the limit' : 'below the limit' };
  }
  return (to - ANY_UNIT[field][ahead]) * by > 0 ? { refused: 'beyond any unit' } : { to };
}
