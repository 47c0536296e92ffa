import { describe, expect, it } from 'vitest';
import {
  armField,
  emptyPlan,
  planErrors,
  planMessage,
  planSize,
  refusedPlan,
  type PlanValues,
} from './plan-form.js';

const ready: PlanValues = {
  ...emptyPlan('track', '2026-05-09'),
  name: ' Does it help? ',
  riders: { fern: 'bike 1' },
  arms: [
    { key: 'now', name: 'As it is', setups: { 'bike 1': 'set-up 1' } },
    { key: 'change 1', name: 'Softer', setups: { 'bike 1': 'set-up 2', 'bike of nobody': 'set-up 9' } },
  ],
};
const [now, change] = ready.arms as [PlanValues['arms'][number], PlanValues['arms'][number]];

describe('a plan that is typed', () => {
  it('becomes a message with one set-up of each ridden bike an arm, and no other', () => {
    expect(planErrors(ready)).toEqual({});
    expect(planMessage(ready)).toEqual({
      name: 'Does it help?',
      trackId: 'track',
      day: '2026-05-09',
      riders: [{ riderId: 'fern', bikeId: 'bike 1' }],
      arms: [
        { name: 'As it is', setups: [{ bikeId: 'bike 1', setupId: 'set-up 1' }] },
        { name: 'Softer', setups: [{ bikeId: 'bike 1', setupId: 'set-up 2' }] },
      ],
      runsAnArm: 4,
      marginPct: 1,
      warmUps: 1,
      blind: false,
      looks: 'at the end',
      trend: 'linear',
    });
  });

  it('says its size by runs or by the difference, never by both', () => {
    expect(planSize(ready)).toMatchObject({ runsAnArm: 4, arms: 2, riders: 1 });
    const byDifference = planSize({ ...ready, sizeBy: 'difference', difference: '2,5', runs: '' });
    expect(byDifference).toMatchObject({ differenceToTellPct: 2.5 });
    expect(byDifference).not.toHaveProperty('runsAnArm');
  });

  it.each([
    ['nobody rides', { riders: {} }],
    ['a figure is empty', { runs: '' }],
    ['a figure is none', { margin: 'one' }],
  ])('has no size while %s', (_, part) => {
    expect(planSize({ ...ready, ...part })).toBeNull();
  });

  it.each([
    ['an empty name', { name: ' ' }, ['name']],
    ['no track', { trackId: '' }, ['trackId']],
    ['nobody', { riders: {} }, ['riders']],
    ['runs that are no figure', { runs: 'four' }, ['runs']],
    ['an arm without a name', { arms: [now, { ...change, name: '' }] }, [armField(change)]],
    ['two arms of one name', { arms: [now, { ...change, name: 'As it is' }] }, [armField(change)]],
    ['an arm without a set-up', { arms: [now, { ...change, setups: {} }] }, [armField(change, 'bike 1')]],
    [
      'one set-up for two arms',
      { arms: [now, { ...change, setups: now.setups }] },
      [armField(now, 'bike 1'), armField(change, 'bike 1')],
    ],
  ])('with %s says so at the field', (_, part, fields) => {
    expect(Object.keys(planErrors({ ...ready, ...part }))).toEqual(fields);
  });

  it('shows what the API refused at the field that it was typed into', () => {
    const refused = { runsAnArm: 'a', 'arms.1.name': 'b', 'arms.1.setups.0.setupId': 'c', seed: 'd' };
    expect(refusedPlan(ready, refused)).toEqual({
      runs: 'a',
      [armField(change)]: 'b',
      [armField(change, 'bike 1')]: 'c',
    });
  });
});
