import { describe, expect, it } from 'vitest';
import { fieldErrors, fieldInWords, refusalInWords } from './field-errors.js';
import { problemOf } from './problem.js';

describe('a refusal of the API', () => {
  it('names each field with what is allowed, under the path the form uses', () => {
    const problem = problemOf(422, {
      code: 'request.invalid',
      title: 'Some fields are not allowed',
      detail: 'fork.pressurePsi must be a number from 0 to 400 psi.',
      errors: [{ field: 'fork.pressurePsi', given: 900, allowed: 'a number from 0 to 400 psi' }],
      requestId: 'r-1',
    });
    expect(problem.message).toContain('fork.pressurePsi');
    expect(fieldErrors(problem)).toEqual({ 'fork.pressurePsi': 'Must be a number from 0 to 400 psi' });
  });

  it('is told with fields as a person says them', () => {
    const errors = [{ field: 'fork.pressurePsi', allowed: 'at most 115 psi' }];
    const detail = 'fork.pressurePsi must be at most 115 psi.';
    expect(refusalInWords(problemOf(422, { detail, errors }))).toBe('fork pressure must be at most 115 psi.');
    expect(refusalInWords(problemOf(409, { detail: 'Read it again.' }))).toBe('Read it again.');
  });

  it.each([
    ['riderId', 'rider'],
    ['riderIds.0', 'rider 1'],
    ['positiveVolumeMl', 'positive volume'],
    ['leverageTable.2.shockTravelMm', 'leverage table 3 shock travel'],
    ['fork.reboundClicks', 'fork rebound clicks'],
    ['timeS', 'time'],
    ['name', 'name'],
  ])('says %s as %s', (field, words) => {
    expect(fieldInWords(field)).toBe(words);
  });

  it.each<[string, unknown]>([
    ['a page of a proxy', '<html>502</html>'],
    ['nothing', undefined],
    ['a list of errors of another shape', { errors: [null, 3, { name: 'x' }] }],
  ])('%s still becomes a problem with its status', (_, body) => {
    const problem = problemOf(502, body);
    expect(problem.status).toBe(502);
    expect(problem.title).not.toBe('');
    expect(problem.fields).toEqual([]);
  });

  it('has no field errors where it is no refusal', () => {
    expect(fieldErrors(new TypeError('offline'))).toEqual({});
  });
});
