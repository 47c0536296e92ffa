import { describe, expect, it } from 'vitest';
import { measuredFigures, measuredUnit } from './measured-unit.js';
import { testUnit } from './test-unit.js';

const found = { positiveVolumeMl: 231.46, negativeVolumeMl: null, boreAreaMm2: testUnit.boreAreaMm2 };

describe('what is written into a unit', () => {
  it('is the volume to a tenth of a millilitre, over the version that was read', () => {
    const figures = measuredFigures(testUnit, found);
    expect(figures).toEqual([{ figure: 'positiveVolumeMl', before: 227, after: 231.5 }]);
    const { id, version, body } = measuredUnit(testUnit, figures);
    expect({ id, version }).toEqual({ id: 'unit-1', version: 3 });
    expect(body).toMatchObject({ name: testUnit.name, positiveVolumeMl: 231.5, negativeVolumeMl: 31.7 });
    expect(body).not.toHaveProperty('id');
    expect(body).not.toHaveProperty('version');
  });

  it('is marked measured, and nothing else is', () => {
    const { body } = measuredUnit(testUnit, measuredFigures(testUnit, found));
    expect(body.sources).toEqual({ strokeMm: 'entered', positiveVolumeMl: 'measured' });
  });

  it('takes another bore along, since the volume was found with it', () => {
    const figures = measuredFigures(testUnit, { ...found, boreAreaMm2: 912.3 });
    expect(figures.map(({ figure }) => figure)).toEqual(['positiveVolumeMl', 'boreAreaMm2']);
  });

  it('leaves the bore alone where no volume was found with it', () => {
    const figures = measuredFigures(testUnit, {
      positiveVolumeMl: null,
      negativeVolumeMl: 30,
      boreAreaMm2: 912.3,
    });
    expect(figures.map(({ figure }) => figure)).toEqual(['negativeVolumeMl']);
  });
});
