import type { DropTestAnswer } from './api/drop-test.js';
import type { LandingField } from './model/drop-form.js';
import { withUnit } from '../../shared/format/with-unit.js';

export const texts = {
  link: 'Drop test',
  title: 'Drop test',
  lead: 'Land from a measured height on several set-ups and read the O-ring: it tells how much of the drop this rider on this bike puts into the spring. Nothing is stored; print the result.',
  noBikes: 'No bikes yet',
  noBikesLead: 'Add a bike with its rider and its fork first; the drop test needs to know them.',
  notForShock:
    'This shock cannot be worked out yet: the bike needs its leverage table. Enter it with the bike, or test the fork.',
  toBike: 'To the bike',
  bike: 'Bike',
  end: 'End',
  fork: 'Fork',
  shock: 'Shock',
  place: 'Air as at',
  seaLevel: 'sea level',

  how: 'How to ride it',
  steps: [
    'Measure the drop from where the wheel leaves to where it lands, to flat ground. Start low: the rider must land it the same way every time.',
    'Push the O-ring down, land, roll to a stop without braking hard, read the ring. Enter every landing in the order ridden.',
    'At least three set-ups (pressure, spacers), each twice or more, in mixed order: A B C B A C, not A A B B C C.',
    'Two heights, one well above the other, are what tells damping apart. One height tells only the absorption.',
    'Stop at the first landing that uses full travel; it tells nothing and costs parts.',
  ],
  landings: 'Landings, in the order ridden',
  none: 'No landings yet',
  noneLead: 'Ride the first one, read the ring, then enter it here.',
  firstLanding: 'Enter the first landing',
  landing: (number: number) => `Landing ${number}`,
  sameAgain: 'Same set-up again',
  another: 'Another set-up',
  remove: (number: number) => `Remove landing ${number}`,
  ask: 'Work it out',
  notAsked: 'Not worked out',
  incomplete: 'Some fields are missing or no number; they are marked above.',
  print: 'Print this page',

  result: 'What the landings tell',
  absorption: 'Goes into the spring',
  interval: (lower: string, upper: string) =>
    `Nine times in ten between ${lower} and ${withUnit(upper, '%')}.`,
  absorptionHint: (height: string, hit: string) =>
    `A drop of ${withUnit(height, 'm')} works on the spring like a hit of ${withUnit(hit, 'm')}: legs, arms, tyre and the other wheel take the rest.`,
  damping: 'Compression damping',
  dampingTold: (times: string, lower: string, upper: string) =>
    `${times} times what the unit’s figures say (nine times in ten ${lower} to ${upper}).`,
  dampingNot:
    'These landings do not tell it apart from the absorption. Landings from two very different heights would.',
  worthless: 'Do not build on this yet.',
  fine: 'Order and scatter of the landings give no reason to doubt it.',
  someDoNotFit:
    'Order and scatter of the landings give no reason to doubt it, but a set-up marked below does not fit. Ride it again.',
  scatter: (times: string) => `The readings scatter ${times} times as much as a ring does.`,
  table: 'Predicted against read',
  height: 'Drop',
  setUp: 'Set-up',
  count: 'Landings',
  read: 'Read',
  predicted: 'Predicted',
  difference: 'Difference',
  off: 'does not fit',
  atFullTravel: (landings: string) =>
    `${landings} at full travel left out: a ring at the end tells no height.`,
  refusedWord: 'These landings tell nothing yet.',
  assumed: 'Where to measure or enter what is assumed',
};

export const LANDING_TEXTS: Readonly<
  Record<LandingField, { readonly label: string; readonly unit: string; readonly whole: boolean }>
> = {
  dropHeightM: { label: 'Height', unit: 'm', whole: false },
  pressurePsi: { label: 'Pressure', unit: 'psi', whole: false },
  spacers: { label: 'Spacers', unit: '', whole: true },
  travelUsedMm: { label: 'Ring reading', unit: 'mm', whole: false },
};

export const REFUSAL_TEXTS: Readonly<Record<NonNullable<DropTestAnswer['reason']>, string>> = {
  'too-few-readings': 'At least two landings short of full travel are needed.',
  'not-identifiable':
    'No part of the drop fits these readings: check heights, pressures and ring readings for a slip.',
};

/** What the page adds to a warning: what to do about it. */
export const WARNING_TEXTS: Readonly<Record<DropTestAnswer['warnings'][number]['code'], string>> = {
  'no-repeats': 'No set-up was ridden twice, so scatter cannot be told from effect. Repeat each of them.',
  scatter: 'The readings scatter more than twice as much as a ring does. Land the same way, then repeat.',
  'order-follows-set-up':
    'The set-ups were ridden in the order of their travel, so that a rider warming up or tiring would look like their effect. Ride them again in mixed order.',
  drift:
    'What is left over rises or falls through the session: the rider, the ground or the air in the unit changed. Ride the first set-up again.',
};

/** Air that nobody entered, in the words of this page. */
export const AIR_TEXTS: Readonly<Record<string, string>> = {
  altitudeM: 'Altitude (sea level)',
  airTemperatureC: 'Air temperature (standard for the altitude)',
};
