import { formatCount, pressureText } from '../../../shared/format/numbers.js';
import type { EndSetup, Setup } from '../../../shared/http/reads/setups.js';

const endWords = ({ pressurePsi, spacers, reboundClicks, compressionClicks }: EndSetup): string =>
  [
    pressureText(pressurePsi),
    formatCount(spacers, 'spacer'),
    ...(reboundClicks === null ? [] : [`rebound ${reboundClicks}`]),
    ...(compressionClicks === null ? [] : [`compression ${compressionClicks}`]),
  ].join(', ');

/** A set-up in one line: fork 71 psi, 2 spacers; shock 185 psi, 1 spacer. */
export const setupWords = ({ fork, shock }: Pick<Setup, 'fork' | 'shock'>): string =>
  [`fork ${endWords(fork)}`, ...(shock === null ? [] : [`shock ${endWords(shock)}`])].join('; ');
