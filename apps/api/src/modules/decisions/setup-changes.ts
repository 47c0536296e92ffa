import type { EndSetupDto, SetupDto } from '../setups/setups.dto.js';
import type { End } from '../suspension/end-inputs.js';
import type { ChangedFigure, SetupChangeDto } from './setup-change.dto.js';

/** Pressures closer than this are the same to any gauge, psi. */
const SAME_PRESSURE_PSI = 0.05;

const NAMES: Readonly<Record<Exclude<ChangedFigure, 'unit'>, (from: string, to: string) => string>> = {
  pressurePsi: (from, to) => `${from} → ${to} psi`,
  spacers: (from, to) => `${from} → ${to} spacers`,
  reboundClicks: (from, to) => `rebound ${from} → ${to} clicks`,
  compressionClicks: (from, to) => `compression ${from} → ${to} clicks`,
};
const FIGURES = Object.keys(NAMES) as (keyof typeof NAMES)[];

/** What differs between two set-ups of a bike, figure by figure, each in words too. */
export function setupChanges(from: SetupDto, to: SetupDto): SetupChangeDto[] {
  return [...endChanges('fork', from.fork, to.fork), ...endChanges('shock', from.shock, to.shock)];
}

function endChanges(end: End, from: EndSetupDto | null, to: EndSetupDto | null): SetupChangeDto[] {
  if (from?.unitId !== to?.unitId) {
    const words = from === null ? 'put in' : to === null ? 'taken out' : 'another unit';
    return [{ end, figure: 'unit', from: null, to: null, inWords: words }];
  }
  if (from === null || to === null) return [];
  return FIGURES.filter((figure) => differs(figure, from[figure], to[figure])).map((figure) => ({
    end,
    figure,
    from: from[figure],
    to: to[figure],
    inWords: NAMES[figure](figureText(from[figure]), figureText(to[figure])),
  }));
}

function differs(figure: ChangedFigure, from: number | null, to: number | null): boolean {
  if (from === null || to === null) return from !== to;
  return figure === 'pressurePsi' ? Math.abs(from - to) >= SAME_PRESSURE_PSI : from !== to;
}

/** With a tenth where there is one; a click that nobody noted has no figure. */
const figureText = (value: number | null): string =>
  value === null ? 'not noted' : String(Number(value.toFixed(1)));
