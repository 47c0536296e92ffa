/** Where a stored figure comes from. What nobody measured or entered is assumed, and is shown as such. */
export const SOURCES = ['measured', 'entered', 'assumed'] as const;
export type Source = (typeof SOURCES)[number];
