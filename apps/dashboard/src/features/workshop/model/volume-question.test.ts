import { describe, expect, it } from 'vitest';
import { firstValues, type MeasureValues } from './measure-form.js';
import { testUnit } from './test-unit.js';
import { volumeQuestion, volumeRefusals } from './volume-question.js';

const values: MeasureValues = {
  ...firstValues(testUnit),
  hoseVolumeMl: '4',
  tries: [
    { extendedPsi: '60', travelMm: '', heldPsi: '' },
    { extendedPsi: '60', travelMm: '120', heldPsi: '128,5' },
  ],
};

describe('what is asked of two readings', () => {
  it('is asked as soon as one try is complete, from full extension to the travel held', () => {
    const asked = volumeQuestion(values, testUnit);
    expect(asked?.question.runs).toEqual([
      {
        spacers: 0,
        readings: [
          { travelMm: 0, pressurePsi: 60 },
          { travelMm: 120, pressurePsi: 128.5 },
        ],
      },
    ]);
    expect(asked?.rows).toEqual([1]);
  });

  it.each<[string, Partial<MeasureValues>]>([
    ['without the hose volume', { hoseVolumeMl: '' }],
    ['while the bore is no number', { boreMm: 'wide' }],
    ['before a try is complete', { tries: values.tries.slice(0, 1) }],
  ])('is not asked %s', (_, change) => {
    expect(volumeQuestion({ ...values, ...change }, testUnit)).toBeNull();
  });

  it('leaves out what nobody entered, so that the service assumes it and says so', () => {
    const question = volumeQuestion(values, testUnit)?.question;
    for (const name of ['hoseVolumeSdMl', 'boreAreaSdPct', 'gaugeZeroSdPsi', 'air']) {
      expect(question).not.toHaveProperty(name);
    }
  });

  it('tells a zero that was never checked from one that is assumed good', () => {
    expect(
      volumeQuestion({ ...values, zeroNeverChecked: true }, testUnit)?.question.gaugeZeroSdPsi,
    ).toBeNull();
  });

  it('counts twice the relative error of a diameter in its area', () => {
    const question = volumeQuestion({ ...values, boreMm: '40', boreSdMm: '0.1' }, testUnit)?.question;
    expect(question?.boreAreaSdPct).toBeCloseTo(0.5, 12);
  });
});

describe('what was refused of two readings', () => {
  it('stands at the field it was typed into, past tries that were not asked', () => {
    const errors = volumeRefusals(
      {
        'runs.0.readings.0.pressurePsi': 'a',
        'runs.0.readings.1.pressurePsi': 'b',
        'runs.0.readings.1.travelMm': 'c',
        'runs.0.spacers': 'd',
        'air.altitudeM': 'e',
        boreAreaMm2: 'Must be a number from 100 to 10000 mm²',
      },
      [1],
    );
    expect(errors).toEqual({
      'tries.1.extendedPsi': 'a',
      'tries.1.heldPsi': 'b',
      'tries.1.travelMm': 'c',
      spacers: 'd',
      altitudeM: 'e',
      boreMm: 'Its area must be a number from 100 to 10000 mm²',
    });
  });
});
