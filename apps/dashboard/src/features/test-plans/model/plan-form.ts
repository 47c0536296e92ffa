import { parseNumber } from '../../../shared/format/parse.js';
import type { PlanInput, PlanSize } from '../api/make-plan.js';
import { texts } from '../texts.js';

/** One thing to try, as it is chosen: a name, and a set-up for each bike. */
export interface ArmValues {
  readonly key: string;
  readonly name: string;
  /** Bike to set-up. */
  readonly setups: Readonly<Record<string, string>>;
}

/** A plan as it is typed. */
export interface PlanValues {
  readonly name: string;
  readonly trackId: string;
  readonly day: string;
  /** Rider to bike; who is not in it does not ride. */
  readonly riders: Readonly<Record<string, string>>;
  readonly arms: readonly ArmValues[];
  readonly sizeBy: 'runs' | 'difference';
  readonly runs: string;
  readonly difference: string;
  readonly margin: string;
  readonly warmUps: string;
  readonly blind: boolean;
  readonly looks: NonNullable<PlanInput['looks']>;
  readonly trend: NonNullable<PlanInput['trend']>;
}

export const newArm = (key: string, name: string): ArmValues => ({ key, name, setups: {} });

/** Four runs of each, one warm-up, 1 %: common practice for half a day, no source. */
export const emptyPlan = (trackId: string, day: string): PlanValues => ({
  name: '',
  trackId,
  day,
  riders: {},
  arms: [newArm('now', 'As it is'), newArm('change 1', '')],
  sizeBy: 'runs',
  runs: '4',
  difference: '2',
  margin: '1',
  warmUps: '1',
  blind: false,
  looks: 'at the end',
  trend: 'linear',
});

export const bikesOf = ({ riders }: Pick<PlanValues, 'riders'>): string[] => [
  ...new Set(Object.values(riders)),
];

/** Messages by field; those of an arm by its key, those of a set-up by arm and bike. */
export type PlanErrors = Readonly<Record<string, string>>;

export const armField = (arm: ArmValues, bikeId?: string) =>
  `arm ${arm.key}${bikeId === undefined ? '' : ` ${bikeId}`}`;

const FIGURES = ['runs', 'difference', 'margin', 'warmUps'] as const;

/** What the form itself can tell before the API is asked. */
export function planErrors(values: PlanValues): PlanErrors {
  const names = values.arms.map(({ name }) => name.trim());
  const chosen = values.arms.flatMap(({ setups }) => Object.values(setups));
  const wrong = FIGURES.filter((name) => !(Number(parseNumber(values[name]) ?? Number.NaN) >= 0)).filter(
    (name) => !(name === 'runs' && values.sizeBy === 'difference'),
  );
  return Object.fromEntries([
    ...(values.name.trim() === '' ? [['name', texts.needed]] : []),
    ...(values.trackId === '' ? [['trackId', texts.needed]] : []),
    ...(Object.keys(values.riders).length === 0 ? [['riders', texts.chooseRider]] : []),
    ...wrong
      .filter((name) => !(name === 'difference' && values.sizeBy === 'runs'))
      .map((name) => [name, texts.notAFigure]),
    ...values.arms.flatMap((arm, i) => {
      const name = arm.name.trim();
      if (name === '') return [[armField(arm), texts.needed]];
      return names.indexOf(name) < i ? [[armField(arm), texts.sameName]] : [];
    }),
    ...values.arms.flatMap((arm) =>
      bikesOf(values).flatMap((bikeId) => {
        const setup = arm.setups[bikeId] ?? '';
        if (setup === '') return [[armField(arm, bikeId), texts.chooseSetup]];
        const again = chosen.filter((other) => other === setup).length > 1;
        return again ? [[armField(arm, bikeId), texts.sameSetup]] : [];
      }),
    ),
  ]) as PlanErrors;
}

const figure = (text: string) => parseNumber(text) ?? Number.NaN;

/** The size that is chosen; null while it is none. */
export function planSize(values: PlanValues): PlanSize | null {
  const [size, margin, warmUps] = [sizeOf(values), figure(values.margin), figure(values.warmUps)];
  const riders = Object.keys(values.riders).length;
  if (riders === 0 || [...Object.values(size), margin, warmUps].some(Number.isNaN)) return null;
  return { ...size, arms: values.arms.length, riders, marginPct: margin, warmUps, trend: values.trend };
}

const sizeOf = ({ sizeBy, runs, difference }: PlanValues) =>
  sizeBy === 'runs' ? { runsAnArm: figure(runs) } : { differenceToTellPct: figure(difference) };

/** The plan for the API. */
export function planMessage(values: PlanValues): PlanInput {
  const bikes = bikesOf(values);
  return {
    name: values.name.trim(),
    trackId: values.trackId,
    ...(values.day !== '' && { day: values.day }),
    riders: Object.entries(values.riders).map(([riderId, bikeId]) => ({ riderId, bikeId })),
    arms: values.arms.map(({ name, setups }) => ({
      name: name.trim(),
      setups: bikes.map((bikeId) => ({ bikeId, setupId: setups[bikeId] ?? '' })),
    })),
    ...sizeOf(values),
    marginPct: figure(values.margin),
    warmUps: figure(values.warmUps),
    blind: values.blind,
    looks: values.looks,
    trend: values.trend,
  };
}

const FIELD_OF: Readonly<Record<string, keyof PlanValues>> = {
  name: 'name',
  trackId: 'trackId',
  day: 'day',
  riders: 'riders',
  runsAnArm: 'runs',
  differenceToTellPct: 'difference',
  marginPct: 'margin',
  warmUps: 'warmUps',
};

/** Refused fields of the message under the fields of the form. */
export function refusedPlan(values: PlanValues, refused: Record<string, string>): PlanErrors {
  return Object.fromEntries(
    Object.entries(refused).flatMap(([path, text]) => {
      const [part = '', index = '', inner = '', place = ''] = path.split('.');
      if (part !== 'arms') return FIELD_OF[part] === undefined ? [] : [[FIELD_OF[part], text]];
      const arm = values.arms[Number(index)];
      if (arm === undefined) return [];
      return [[armField(arm, inner === 'setups' ? bikesOf(values)[Number(place)] : undefined), text]];
    }),
  ) as PlanErrors;
}
