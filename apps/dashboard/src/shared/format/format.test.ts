import { describe, expect, it } from 'vitest';
import { numberText, parseNumber } from './parse.js';
import {
  formatChange,
  formatCount,
  formatHeight,
  formatNumber,
  formatShare,
  formatSigned,
} from './numbers.js';
import { formatRunTime, localDay, parseRunTime } from './time.js';
import { wholeFigures } from './whole-figures.js';
import { withUnit } from './with-unit.js';

describe('numbers as a person reads them', () => {
  it('a change carries its sign and its unit, and is said in words where it rounds to nothing', () => {
    expect(formatChange(3)).toBe('+3');
    expect(formatChange(-1.5, 1, '%')).toBe('−1.5\u00a0%');
    expect(formatChange(-0.2)).toBe('no\u00a0change');
    expect(formatChange(0.04, 1, '%')).toBe('no\u00a0change');
  });

  it('the ends of an interval carry their sign, and nothing has none', () => {
    expect(formatSigned(0.3, 1)).toBe('+0.3');
    expect(formatSigned(-1200)).toBe('−1200');
    expect(formatSigned(-0.04, 1)).toBe('0.0');
  });

  it('no line parts a figure from its unit, in figures or in sentences', () => {
    expect(withUnit('18.1', '%')).toBe('18.1\u00a0%');
    expect(withUnit('68.9', '°')).toBe('68.9°');
    expect(withUnit('2.48', '')).toBe('2.48');
    expect(wholeFigures('The 95 % hit leaves 12–14 mm of 4 m/s² at 2 N·s; 3 men stay, ± 2 mL')).toBe(
      'The 95\u00a0% hit leaves 12–14\u00a0mm of 4\u00a0m/s² at 2\u00a0N·s; 3 men stay, ±\u00a02\u00a0mL',
    );
  });

  it('a risk that the model cannot know better is not shown as zero or as certain', () => {
    expect(formatShare(0.042)).toBe('4\u00a0%');
    expect(formatShare(0.0004)).toBe('under 1\u00a0%');
    expect(formatShare(0.9999)).toBe('over 99\u00a0%');
    expect(formatShare(0)).toBe('0\u00a0%');
  });

  it('hit heights keep two decimals below a metre', () => {
    expect(formatHeight(0.424)).toBe('0.42');
    expect(formatHeight(1.63)).toBe('1.6');
  });

  it('thousands are apart only where a field would be hard to read without', () => {
    expect(formatNumber(1740)).toBe('1740');
    expect(formatNumber(12_000)).toBe('12,000');
  });

  it('one of a thing is not several', () => {
    expect(formatCount(1, 'run')).toBe('1\u00a0run');
    expect(formatCount(0, 'run')).toBe('0\u00a0runs');
  });
});

it('a calendar day is that of the device, not the one in Greenwich', () => {
  expect(localDay(new Date(2026, 0, 3, 0, 10))).toBe('2026-01-03');
});

describe('run times', () => {
  it.each([
    ['2:07.4', 127.4],
    ['127.4', 127.4],
    ['0:59,25', 59.25],
    [' 3:00 ', 180],
  ])('reads %s', (text, seconds) => {
    expect(parseRunTime(text)).toBeCloseTo(seconds, 9);
  });

  it.each(['', '2:60', 'fast', '1:2:3', '-4', '2:07.'])('refuses %s', (text) => {
    expect(parseRunTime(text)).toBeNull();
  });

  it('shows minutes, seconds and tenths, also when the tenths round up to a minute', () => {
    expect(formatRunTime(127.4)).toBe('2:07.4');
    expect(formatRunTime(59.96)).toBe('1:00.0');
    expect(formatRunTime(60)).toBe('1:00.0');
  });
});

describe('typed numbers', () => {
  it.each([
    ['71', 71],
    [' 71,5 ', 71.5],
    ['−3', -3],
    ['.5', 0.5],
    ['', null],
  ])('reads %j', (text, value) => {
    expect(parseNumber(text)).toBe(value);
  });

  it.each(['71 psi', '1.2.3', 'NaN', 'Infinity', '1e400', '0x10'])('%j is no number', (text) => {
    expect(parseNumber(text)).toBeNaN();
  });

  it('fills a field with no more digits than a person would type', () => {
    expect(numberText(0.1 + 0.2)).toBe('0.3');
    expect(numberText(null)).toBe('');
  });
});
