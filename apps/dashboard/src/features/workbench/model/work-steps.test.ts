import { describe, expect, it } from 'vitest';
import { workFor } from './work-steps.js';

const now = { pressurePsi: 71, spacers: 2 };

describe('work steps', () => {
  it('are none where nothing changes', () => {
    expect(workFor(now, now, 'keep', 3)).toEqual({ spacersNeeded: null, steps: [] });
  });

  it('let all air out before the cap is opened, and pump only after it is closed', () => {
    const { steps } = workFor(now, { pressurePsi: 66, spacers: 3 }, null, 3);
    const order = [
      'Let all air out',
      'Open the cap',
      'Put 1\u00a0spacer in',
      'by hand',
      'Pump to 66\u00a0psi',
    ];
    const places = order.map((words) => steps.findIndex((step) => step.includes(words)));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('open nothing where only the pressure changes', () => {
    const { steps, spacersNeeded } = workFor(now, { pressurePsi: 66, spacers: 2 }, null, 0);
    expect(steps.join(' ')).not.toMatch(/cap|spacer in|spacer out/);
    expect(spacersNeeded).toBeNull();
  });

  it('count the spacers that go in against the box', () => {
    expect(workFor(now, { pressurePsi: 66, spacers: 4 }, null, 1).spacersNeeded).toEqual({
      count: 2,
      inStock: 1,
    });
    expect(workFor(now, { pressurePsi: 75, spacers: 1 }, null, 1).spacersNeeded).toBeNull();
  });

  it('always end with a slow first ride', () => {
    const { steps } = workFor(now, { pressurePsi: 75, spacers: 1 }, 'slower', 1);
    expect(steps.at(-1)).toMatch(/Ride slowly at first. Stop on any hard knock/);
    expect(steps.join(' ')).toMatch(/rebound a click slower/);
  });
});
