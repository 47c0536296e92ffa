import { describe, expect, it } from 'vitest';
import { anotherSetUp, firstToType, landingErrors, landingMessage, sameAgain } from './drop-form.js';

const ridden = { dropHeightM: '0,8', pressurePsi: '71', spacers: '2', travelUsedMm: '128' };

describe('landings of a drop test', () => {
  it('on the same set-up again only need the ring to be read', () => {
    const next = sameAgain([ridden]);
    expect(next).toEqual({ ...ridden, travelUsedMm: '' });
    expect(firstToType(next)).toBe('travelUsedMm');
  });

  it('on another set-up keep the height', () => {
    const next = anotherSetUp([ridden]);
    expect(next).toEqual({ dropHeightM: '0,8', pressurePsi: '', spacers: '', travelUsedMm: '' });
    expect(firstToType(next)).toBe('pressurePsi');
  });

  it('begin with the height', () => {
    expect(firstToType(anotherSetUp([]))).toBe('dropHeightM');
  });

  it('go out in the order ridden', () => {
    const second = { ...ridden, pressurePsi: '65' };
    expect(landingMessage([ridden, second])).toEqual([
      { dropHeightM: 0.8, pressurePsi: 71, spacers: 2, travelUsedMm: 128 },
      { dropHeightM: 0.8, pressurePsi: 65, spacers: 2, travelUsedMm: 128 },
    ]);
  });

  it('name what is missing or no number at its own field', () => {
    expect(landingErrors([ridden, { ...ridden, spacers: '', travelUsedMm: 'deep' }])).toEqual({
      'landings.1.spacers': 'Needed',
      'landings.1.travelUsedMm': 'Must be a number',
    });
  });
});
