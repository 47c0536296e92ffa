import type { ChosenUnits } from './api/choose-units.js';

export const texts = {
  title: 'Units',
  lead: 'Every page shows figures, and takes them, in the units chosen here. What is stored stays as it is; team mates choose their own. Travel is in millimetres.',
  save: 'Show figures like this',
  example: (figures: readonly string[]) => `Figures are shown like this: ${figures.join(', ')}.`,
};

export const UNIT_FIELDS: readonly {
  readonly name: keyof ChosenUnits;
  readonly label: string;
  readonly choices: readonly string[];
}[] = [
  { name: 'pressure', label: 'Pressures', choices: ['psi', 'bar'] },
  { name: 'mass', label: 'Masses', choices: ['kg', 'lb'] },
  { name: 'temperature', label: 'Temperatures', choices: ['°C', '°F'] },
];
