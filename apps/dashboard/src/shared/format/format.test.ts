import { describe, expect, it } from 'vitest';
import { numberText, parseNumber } from './parse.js';
import { formatChange, formatCount, formatHeight, formatNumber, formatShare } from './numbers.js';
import { formatRunTime, localDay, parseRunTime } from './time.js';

describe('numbers as a person reads them', () => {
  it('a change carries its sign, and none that rounds to nothing', () => {
    expect(formatChange(3)).toBe('+3');
    expect(formatChange(-1.5, 1)).toBe('−1.5');
    expect(formatChange(-0.2)).toBe('±0');
  });

  it('a risk that the model cannot know better is not shown as zero or as certain', () => {
    expect(formatShare(0.042)).toBe('4 %');
    expect(formatShare(0.0004)).toBe('under 1 %');
    expect(formatShare(0.9999)).toBe('over 99 %');
    expect(formatShare(0)).toBe('0 %');
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
    expect(formatCount(1, 'run')).toBe('1 run');
    expect(formatCount(0, 'run')).toBe('0 runs');
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
