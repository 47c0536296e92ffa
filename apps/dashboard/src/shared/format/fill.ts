import { formatCount, pressureText } from './numbers.js';

/** What is in one end: gauge pressure at full extension, and volume spacers. */
interface Filled {
  readonly pressurePsi: number;
  readonly spacers: number;
}

/** A set-up of one end in a word: 68 psi · 3 spacers. */
export const fillText = ({ pressurePsi, spacers }: Filled): string =>
  `${pressureText(pressurePsi)} · ${formatCount(spacers, 'spacer')}`;
