/**
 * What the hardest run in twenty uses beyond a usual one, m: some 15 mm on these forks (13–19 mm in eight teams of ten).
 * Told to those who have no model of the spring, in their favour.
 */
export const HARD_BEYOND_USUAL = 0.015;
