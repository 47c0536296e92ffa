import { describe, expect, it } from 'vitest';
import type { VolumeAnswer } from '../api/identify-volume.js';
import { firstValues, type MeasureValues } from './measure-form.js';
import { negativeQuestion, negativeRefusals, positiveVolume } from './negative-question.js';
import { testUnit } from './test-unit.js';

const found: VolumeAnswer = {
  status: 'identified',
  reason: null,
  message: '',
  positiveVolumeMl: 231,
  sdMl: 3,
  relativeSdPct: 1.3,
  shares: [],
  scatter: 1,
  residuals: [],
  engineVersion: '1.0.0',
  assumed: [],
};
const values: MeasureValues = {
  ...firstValues(testUnit),
  hoseVolumeMl: '4',
  equalisings: [
    { beforePsi: '70', afterPsi: '' },
    { beforePsi: '70', afterPsi: '62' },
  ],
};

describe('what is asked of a drop of pressure', () => {
  it('is measured against the positive volume found before it', () => {
    expect(negativeQuestion(values, testUnit, found)?.question).toMatchObject({
      positiveVolumeMl: 231,
      positiveVolumeSdMl: 3,
      repeats: [{ beforePsi: 70, afterPsi: 62 }],
    });
  });

  it('needs to know how good a positive volume is that was not found here', () => {
    expect(negativeQuestion(values, testUnit, undefined)).toBeNull();
    expect(positiveVolume({ ...values, positiveVolumeSdMl: '5' }, undefined)).toEqual({
      volumeMl: 227,
      sdMl: 5,
    });
  });

  it('names a refused reading at the try it came from', () => {
    expect(negativeRefusals({ 'repeats.0.afterPsi': 'a', hoseVolumeMl: 'b' }, [1])).toEqual({
      'equalisings.1.afterPsi': 'a',
      hoseVolumeMl: 'b',
    });
  });
});
