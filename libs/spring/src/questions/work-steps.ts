/** What a unit is filled and set to. Pressure: gauge, Pa; clicks from fully closed, null where nobody noted them. */
export interface UnitSetting {
  readonly pressure: number;
  readonly spacers: number;
  readonly rebound: number | null;
  readonly compression: number | null;
}

/** One step of the work at a unit. What it is called, and its figures, is told where it is shown. */
export const WORK_STEPS = [
  'write-down',
  'mount-unit',
  'release-air',
  'open-cap',
  'move-spacers',
  'close-cap',
  'pump',
  'cycle',
  'set-rebound',
  'set-compression',
  'ride-slowly',
] as const;
export type WorkStep = (typeof WORK_STEPS)[number];

/** Half of the finest that a pump's gauge shows (0.1 psi), Pa: a smaller difference nobody can pump. */
const SAME_PRESSURE = 345;

/**
 * What to do at a unit to get from one setting to another, in this order; nothing where nothing changes. The air is let
 * out before the cap is opened, and pumped in after it is closed: a cap that is opened under pressure flies.
 * @param from null: what was in it is not known, or it was another unit that comes out.
 * Common practice of the trade, no source; the unit's own manual comes first.
 */
export function workSteps(from: UnitSetting | null, to: UnitSetting): WorkStep[] {
  const isRefilled =
    from === null || from.spacers !== to.spacers || Math.abs(from.pressure - to.pressure) > SAME_PRESSURE;
  const isOpened = from !== null && from.spacers !== to.spacers;
  const isSet = (click: 'rebound' | 'compression') => to[click] !== null && to[click] !== from?.[click];
  if (!isRefilled && !isSet('rebound') && !isSet('compression')) return [];
  return [
    from === null ? 'mount-unit' : 'write-down',
    ...(isOpened ? (['release-air', 'open-cap', 'move-spacers', 'close-cap'] as const) : []),
    ...(isRefilled ? (['pump', 'cycle'] as const) : []),
    ...(isSet('rebound') ? (['set-rebound'] as const) : []),
    ...(isSet('compression') ? (['set-compression'] as const) : []),
    'ride-slowly',
  ];
}
