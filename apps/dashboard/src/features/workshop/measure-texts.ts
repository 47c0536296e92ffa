import type { VolumeAnswer } from './api/identify-volume.js';
import type { NegativeVolumeAnswer } from './api/identify-negative-volume.js';
import type { MeasureField } from './model/measure-form.js';
import type { VolumeSource } from './model/interval.js';
import { withUnit } from '../../shared/format/with-unit.js';
import { wholeFigures } from '../../shared/format/whole-figures.js';

export const texts = {
  link: 'Measure this unit',
  title: (unit: string) => `Measure ${unit}`,
  lead: 'Finds the air volumes that nobody publishes, with a shock pump, a ruler and half an hour. Nothing is stored before you write it into the unit.',
  back: 'To the unit',
  print: 'Print this page',
  none: 'No such fork or shock',
  noneLead: 'Add the fork or shock first; then it can be measured.',

  first: '1 · What you need, and cautions',
  need: 'You need',
  needs: [
    'a shock pump whose gauge you can read to 0.5 psi, and its hose volume: fill the hose with water and weigh it (1 g is 1 mL), or take 0.785 × inner diameter² × length in centimetres, and add the gauge',
    'a caliper for the bore (inner diameter of the tube that the air piston runs in), from a service or from the spare seal',
    'a ruler along the stanchion or shaft, and something that holds the unit at a travel: a strap over bars and axle for a fork, a vice with soft jaws and a clamp for a shock',
  ],
  cautions: 'Cautions',
  cautionList: [
    'Stay under the highest pressure of the unit and of the pump: held deep in its travel, the pressure doubles or trebles. Start low, 50 to 60 psi in a fork.',
    'A unit under pressure pushes back with the weight of a person. Never let a strap or clamp go; let the air out first.',
    'Let all air out before anything is taken apart, with the unit pointed away from faces.',
    'Take the spacers out if you can: then their volume need not be known.',
    'Work in one place at one temperature, with the unit at rest there for an hour.',
  ],

  second: '2 · Positive volume by two readings',
  steps: [
    'Pump at full extension. Move slowly through the first third of the travel and back five times, so that both chambers settle; top up.',
    'Leave the pump on, at full extension. Wait 30 s. Read the pressure.',
    'Without taking the pump off, compress to a travel of half the stroke or more and hold it. Wait 30 s. Read pressure and travel.',
    'Let it come back slowly. Repeat from the top, five times if you can.',
  ],
  setUp: 'Pump, bore and place',
  setUpHint: 'What is left empty is assumed, counted in the result and named there.',
  neverChecked: 'I have never seen this gauge read 0 with the pump off',
  try: (number: number) => `Try ${number}`,
  extended: 'Pressure extended',
  travel: 'Travel held',
  held: 'Pressure held',
  afterWait: wholeFigures('after 30 s'),
  byRuler: 'by the ruler',
  more: 'Another try',
  remove: (number: number) => `Remove try ${number}`,
  wait: wholeFigures('Start the 30 s'),
  waiting: (seconds: number) => `${withUnit(String(seconds), 's')} left`,
  readNow: 'Read the gauge now',

  result: 'Positive volume',
  resultNone: 'Comes as soon as the hose volume and one whole try are in.',
  counting: 'Working it out…',
  between: (lower: string, upper: string) =>
    `Nine times in ten between ${lower} and ${withUnit(upper, 'mL')}.`,
  positiveHint: 'At full extension, without spacers.',
  limited: (source: string, share: string) => `Limited most by the ${source} (${share} of the doubt).`,
  limitedBy: (source: string) => `Limited most by the ${source}.`,
  onlyKnownTo: (perCent: string) => `It would only be known to ${withUnit(perCent, '%')}.`,
  allShares: 'What the doubt comes from',
  share: 'Part of it',
  source: 'From',
  scatterWord: 'These tries disagree.',
  scatter: (times: string) =>
    `They scatter ${times} times as much as gauge and ruler do: something moved, leaked or cooled in between. Repeat them before you trust the volume; the range above is widened for it.`,
  refusedWord: 'These readings do not tell the volume.',
  boreWord: 'The bore is assumed.',
  boreAssumed:
    'A volume is no better than the bore it is worked out from. Measure the bore, enter it above with how far it may be off.',

  third: '3 · Negative volume by equalising',
  thirdSteps: [
    'Let all air out at full extension, then compress and extend it slowly with the valve open, so that the negative chamber is empty too.',
    'Leave the pump on, at full extension. Pump. Wait 30 s. Read: that is before.',
    'Without taking the pump off, push slowly once past the travel at which the chambers equalise, and back. Wait 30 s. Read: that is after. It must have dropped.',
    'Let all air out and repeat, four times if you can.',
  ],
  against: (volume: string, sd: string) =>
    `Measured against the positive volume of step 2: ${volume} ±${withUnit(sd, 'mL')}.`,
  againstTyped:
    'Step 2 has not told the positive volume yet. If you know it otherwise, enter it here with how far it may be off.',
  before: 'Before',
  after: 'After',
  negativeResult: 'Negative volume',
  negativeNone: 'Comes as soon as the positive and hose volume and one whole try are in.',
  negativeHint: 'At full extension.',
  negativeRefused: 'These readings do not tell the negative volume.',

  fourth: '4 · Write it into the unit',
  nothingYet: 'Nothing to write yet: step 2 or 3 must tell a volume first.',
  mechanicOnly: 'A mechanic of the team can write this into the unit. Print this page and take it to them.',
  figure: 'Figure',
  inUnit: 'In the unit',
  measured: 'Measured',
  changes:
    'Each is marked measured. Every hit height and baseline behind this unit is worked out anew from it.',
  write: 'Write into the unit',
  written: 'Written into the unit, marked measured.',
  notWritten: 'Not written',
  stale: 'Your readings are still here. Look at what the unit says now, then write again.',
  lookAgain: 'Read the unit again',
};

interface FieldText {
  readonly label: string;
  readonly unit: string;
  readonly hint: string;
  readonly required?: boolean;
}

export const FIELD_TEXTS: Readonly<Record<MeasureField, FieldText>> = {
  boreMm: {
    label: 'Bore, inner diameter',
    unit: 'mm',
    hint: 'As the unit has it, unless you measured it',
    required: true,
  },
  boreSdMm: { label: 'The bore may be off by', unit: 'mm', hint: 'Empty: 0.5 % of its area' },
  spacers: { label: 'Spacers in it', unit: '', hint: 'Best 0', required: true },
  hoseVolumeMl: { label: 'Air in hose and gauge', unit: 'mL', hint: 'Usually 2 to 8', required: true },
  hoseVolumeSdMl: { label: 'The hose may be off by', unit: 'mL', hint: 'Empty: 1.5 mL' },
  gaugeZeroSdPsi: {
    label: 'The gauge’s zero may be off by',
    unit: 'psi',
    hint: 'Empty: 0.3 psi',
  },
  gaugeReadingSdPsi: { label: 'A reading may be off by', unit: 'psi', hint: 'Empty: 0.5 psi' },
  travelSdMm: { label: 'A travel may be off by', unit: 'mm', hint: 'Empty: 0.5 mm' },
  altitudeM: { label: 'Altitude of the workshop', unit: 'm', hint: 'Empty: sea level' },
  positiveVolumeMl: { label: 'Positive volume', unit: 'mL', hint: 'At full extension, without spacers' },
  positiveVolumeSdMl: { label: 'It may be off by', unit: 'mL', hint: 'Two times in three' },
};

export const SOURCE_TEXTS: Readonly<Record<VolumeSource, string>> = {
  gaugeReadings: 'pressure readings',
  travelReadings: 'travel readings',
  boreArea: 'bore',
  hoseVolume: 'hose volume',
  gaugeZero: 'gauge’s zero',
  spacerVolume: 'spacer volume',
};

/** What to do about what limits the volume. */
export const BETTER_TEXTS: Readonly<Record<VolumeSource, string>> = {
  gaugeReadings: 'More tries help, and a deeper travel.',
  travelReadings: 'More tries help, and a deeper travel held against a stop.',
  boreArea: 'Measure the bore with a caliper, crosswise and twice.',
  hoseVolume: 'Fill the hose with water and weigh it, or use a shorter one.',
  gaugeZero: 'Look at what the gauge shows with the pump off, and enter how far that may be from 0.',
  spacerVolume: 'Take the spacers out, or dip one into a measuring glass.',
};

export const REFUSAL_TEXTS: Readonly<Record<NonNullable<VolumeAnswer['reason']>, string>> = {
  'too-few-travels': 'The second reading must be at another travel than full extension.',
  'no-pressure-rise':
    'The pressure hardly rises from one reading to the next. Hold it deeper, or look for a leak at the pump.',
  'not-identifiable':
    'The readings cannot be told apart from what else is unknown: check the gauge’s zero, the hose volume and the travels.',
  'too-uncertain': 'The volume would be too unsure to predict travel by.',
};

export const NEGATIVE_REFUSAL_TEXTS: Readonly<Record<NonNullable<NegativeVolumeAnswer['reason']>, string>> = {
  'no-pressure-drop':
    'The pressure did not drop: the negative chamber was not empty before, or it did not fill. Let all air out and begin again.',
  'too-uncertain': 'The volume would be too unsure. Repeat it, and read the gauge finer if you can.',
};

/** What the service names as assumed, in the words of this page. */
export const ASSUMED_TEXTS: Readonly<Record<string, string>> = {
  hoseVolumeSdMl: 'hose volume good to 1.5 mL',
  boreAreaSdPct: 'bore area good to 0.5 %',
  gaugeZeroSdPsi: 'gauge’s zero good to 0.3 psi',
  gaugeReadingSdPsi: 'a pressure reading good to 0.5 psi',
  travelSdMm: 'a travel reading good to 0.5 mm',
  spacerVolumeSdPct: 'spacer volume good to 10 %',
  'air.altitudeM': 'sea level',
};
