import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { RIDER } from './support/team.js';

/** Figures that are read at arm's length in the sun, CSS px. */
const LEAST_FIGURE_PX = 40;
/** What a gloved thumb hits, CSS px. */
const LEAST_TARGET_PX = 48;

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

describe.each(SIZES)('my bike on a $name', (size) => {
  it('shows the set-up in big figures, to scale, and why it was changed', async () => {
    const page = await house.enter(RIDER, size);
    const figure = page.getByText('71', { exact: true });
    await figure.waitFor();
    // The box of a line of text is never lower than its font is high.
    expect((await figure.boundingBox())?.height).toBeGreaterThanOrEqual(LEAST_FIGURE_PX);
    await page.getByRole('img', { name: /^Stroke 170\smm; sag \d+\smm/ }).waitFor();
    await page.getByRole('img', { name: /^Stroke 65\smm/ }).waitFor();
    await page.getByText('“Stay higher under braking.”').waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('logs a run with track and ground filled in from the last one', async () => {
    const page = await house.enter(RIDER, size);
    await page.getByRole('link', { name: 'Log a run' }).click();
    const save = page.getByRole('button', { name: 'Save the run', exact: true });
    await save.waitFor();
    expect((await save.boundingBox())?.height).toBeGreaterThanOrEqual(LEAST_TARGET_PX);
    await page.getByText('Slate Ladder · damp').waitFor();

    const time = size.name === 'phone' ? '2:59.1' : '2:58.4';
    await page.getByLabel('Time', { exact: true }).fill(time);
    await page.getByLabel('Fork ring', { exact: true }).fill('141');
    await page
      .getByRole('group', { name: /Support on big hits/ })
      .getByRole('radio', { name: '4' })
      .check();
    await save.click();

    const newest = page.getByRole('region', { name: 'Last runs' }).getByRole('listitem').first();
    await newest.getByText(time).waitFor();
    expect(await newest.innerText()).toMatch(/141\smm · hit 0\.\d+\sm/);
  });

  it('logs time and both rings in five touches', async () => {
    const page = await house.enter(RIDER, size);
    let touches = 0;
    const touch = async (target: Locator, share?: number) => {
      touches += 1;
      const box = share === undefined ? null : await target.boundingBox();
      await target.click(
        box === null ? {} : { position: { x: box.width * (share ?? 0), y: box.height / 2 } },
      );
    };
    await touch(page.getByRole('link', { name: 'Start a run' }));
    await page.waitForTimeout(1_200);
    await touch(page.getByRole('button', { name: 'Stop' }));
    await touch(page.getByRole('slider', { name: /fork/i }), 0.8);
    await touch(page.getByRole('slider', { name: /shock/i }), 0.7);
    await touch(page.getByRole('button', { name: 'Save the run', exact: true }));
    const newest = page.getByRole('region', { name: 'Last runs' }).getByRole('listitem').first();
    await newest.getByText(/^0:\d\d\.\d$/).waitFor();
    expect(await newest.innerText()).toMatch(/1[2-4]\d\smm · hit 0\.\d+\sm/);
    expect(touches).toBeLessThanOrEqual(5);
  });

  it('takes the times of sections by one touch at the end of each, and they add up to the run', async () => {
    const page = await house.enter(RIDER, size);
    await page.getByRole('link', { name: 'Start a run' }).click();
    const mark = page.getByRole('button', { name: 'End of Ladder' });
    await mark.waitFor();
    expect((await mark.boundingBox())?.height).toBeGreaterThanOrEqual(LEAST_TARGET_PX);
    await page.waitForTimeout(1_300);
    await mark.click();
    // The last section ends with the run.
    await mark.waitFor({ state: 'detached' });
    await page.waitForTimeout(1_200);
    await page.getByRole('button', { name: 'Stop' }).click();
    const seconds = async (label: string) =>
      Number((await page.getByLabel(label, { exact: true }).inputValue()).slice(2));
    const [time, ladder, slab] = [await seconds('Time'), await seconds('Ladder'), await seconds('Slab')];
    expect(ladder).toBeGreaterThan(1);
    expect(slab).toBeGreaterThan(1);
    expect(ladder + slab).toBeCloseTo(time, 6);
    await page.getByRole('button', { name: 'Save the run', exact: true }).click();
    await page.getByRole('region', { name: 'Last runs' }).getByRole('listitem').first().waitFor();
  });

  it('keeps a run that a mistake spoilt, void and with its reason', async () => {
    const page = await house.enter(RIDER, size);
    await page.getByRole('link', { name: 'Log a run' }).click();
    await page.getByText('Slate Ladder · damp').click();
    await page.getByLabel('What happened').fill(`Slid out, ${size.name}`);
    await page.getByRole('button', { name: 'Save as spoilt by a mistake' }).click();
    await page.getByRole('region', { name: 'Last runs' }).getByText(`Slid out, ${size.name}`).waitFor();
  });

  it('shows what the API refuses at the field, and keeps what was typed', async () => {
    const page = await house.enter(RIDER, size);
    await page.getByRole('link', { name: 'Log a run' }).click();
    const ring = page.getByLabel('Fork ring', { exact: true });
    await ring.fill('260');
    await page.getByRole('button', { name: 'Save the run' }).click();
    await page.getByRole('alert').waitFor();
    expect(await ring.getAttribute('aria-invalid')).toBe('true');
    expect(await ring.inputValue()).toBe('260');
  });
});
