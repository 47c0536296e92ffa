import type { EndSetup, Setup } from '../http/reads/setups.js';
import { formatChange, pressureChangeText, wordFor } from './numbers.js';

/** Pressures closer than this are the same to any gauge, psi. */
const SAME_PRESSURE_PSI = 0.05;

/** What differs between two set-ups of a bike, in the words of the pit: "fork +1 spacer, −3 psi". */
export function setupChanges(before: Setup, after: Setup): string[] {
  return [...endChanges('fork', before.fork, after.fork), ...endChanges('shock', before.shock, after.shock)];
}

function endChanges(end: string, before: EndSetup | null, after: EndSetup | null): string[] {
  if (before === null && after === null) return [];
  if (before === null || after === null) return [`${end} ${after === null ? 'taken out' : 'put in'}`];
  if (before.unitId !== after.unitId) return [`another ${end}`];
  const changes = [
    spacerChange(after.spacers - before.spacers),
    pressureChange(after.pressurePsi - before.pressurePsi),
    clickChange('rebound', before.reboundClicks, after.reboundClicks),
    clickChange('compression', before.compressionClicks, after.compressionClicks),
  ].filter((change) => change !== '');
  return changes.length === 0 ? [] : [`${end} ${changes.join(', ')}`];
}

const spacerChange = (spacers: number) =>
  spacers === 0 ? '' : formatChange(spacers, 0, wordFor(Math.abs(spacers), 'spacer'));

const pressureChange = (psi: number) => (Math.abs(psi) < SAME_PRESSURE_PSI ? '' : pressureChangeText(psi));

function clickChange(name: string, before: number | null, after: number | null): string {
  if (before === after) return '';
  if (before === null || after === null) return `${name} ${after === null ? 'not noted' : after}`;
  return `${name} ${formatChange(after - before)}`;
}
