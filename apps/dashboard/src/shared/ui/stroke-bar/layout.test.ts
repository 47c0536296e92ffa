import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisTicks, describeStroke, layoutLabels, toPixels } from './layout.js';

const marksArbitrary = fc
  .record({
    strokeMm: fc.double({ min: 40, max: 210, noNaN: true }),
    shares: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ strokeMm, shares }) => {
    const [sagMm = 0, medianHitMm = 0, high = 0, bumperStartMm = 0] = shares
      .sort((a, b) => a - b)
      .map((share) => share * strokeMm);
    return { strokeMm, sagMm, medianHitMm, highHit: { mm: high }, bumperStartMm };
  });

describe('stroke bar', () => {
  it('is to scale', () => {
    expect(toPixels(85, 170, 340)).toBe(170);
  });

  it('keeps a mark beyond the stroke at its end', () => {
    expect(toPixels(175, 170, 340)).toBe(340);
  });

  it('never lets two words touch on the same line', () => {
    fc.assert(
      fc.property(marksArbitrary, fc.integer({ min: 280, max: 900 }), (marks, width) => {
        const labels = layoutLabels(marks, width);
        for (const a of labels)
          for (const b of labels)
            if (a.key < b.key && a.row === b.row) {
              const [left, right] = a.textPx < b.textPx ? [a, b] : [b, a];
              expect(right.textPx).toBeGreaterThan(left.textPx + left.text.length * 7.9);
            }
      }),
    );
  });

  it('leaves out what is not known', () => {
    expect(layoutLabels({ strokeMm: 170, sagMm: 30 }, 340).map((label) => label.text)).toEqual(['sag 30']);
  });

  it('ends its axis with the full stroke', () => {
    expect(axisTicks(170, 340)).toEqual([0, 50, 100, 170]);
    expect(axisTicks(62.5, 900).at(-1)).toBe(62.5);
  });

  it('says all of it in words', () => {
    expect(
      describeStroke({
        strokeMm: 170,
        sagMm: 31,
        medianHitMm: 98,
        highHit: { mm: 142, lowMm: 131, highMm: 150 },
        bumperStartMm: 150,
      }),
    ).toBe(
      'Stroke 170\u00a0mm; sag 31\u00a0mm; median hit 98\u00a0mm; 95\u00a0% hit 142\u00a0mm, between 131 and 150\u00a0mm; bumper from 150\u00a0mm.',
    );
  });
});
