import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { COACH } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

async function openTrack(size: Size) {
  const page = await house.enter(COACH, size);
  await page.getByRole('link', { name: 'Slate Ladder' }).click();
  await page.getByRole('heading', { level: 1, name: 'Slate Ladder' }).waitFor();
  return page;
}

describe.each(SIZES)('a track on a $name', (size) => {
  it('shows every reading in its picture, and in a table behind it', async () => {
    const page = await openTrack(size);
    const picture = page.getByRole('figure', { name: 'How hard this track hits, fork' });
    await picture.getByRole('group', { name: /^Rider Fern: 4 readings/ }).waitFor();
    await picture.getByText('Every reading as a table').click();
    const rows = picture.getByRole('table').getByRole('row');
    expect(await rows.count()).toBe(1 + 4);
    expect(await picture.getByRole('cell', { name: 'at least', exact: true }).count()).toBe(1);
    for (const name of ['How probable it was', 'Moves the rider’s level'])
      expect(await picture.getByRole('columnheader', { name, exact: true }).count()).toBe(1);
    // Three tell the height and move the level; what is 'at least' says that it does not.
    expect(await picture.getByRole('cell', { name: /^([+−]\d+\.\d\s%|no\schange)$/ }).count()).toBe(3);
    expect(await picture.getByRole('cell', { name: 'a bound: not told' }).count()).toBe(1);
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('says how differently a track suits single riders, and that it is mostly assumed', async () => {
    const page = await openTrack(size);
    await page.getByText(/How a track suits one rider is taken to differ by about \d+\s%/).waitFor();
  });

  it('tells the run behind a reading to the keyboard', async () => {
    const page = await openTrack(size);
    const picture = page.getByRole('figure', { name: 'How hard this track hits, fork' });
    await picture.getByRole('group', { name: /^Rider Fern/ }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await picture.getByRole('status').innerText()).toMatch(/May 2026, Fern, enduro: 0\.\d+\sm/);
  });

  it('offers a baseline with predictions, evidence and what is assumed', async () => {
    const page = await openTrack(size);
    const fork = page
      .getByRole('article', { name: 'Rider Fern, Fern, enduro' })
      .getByRole('group', { name: 'Fork', exact: true });
    await fork.getByText('rider here', { exact: true }).waitFor();
    expect(
      await fork.getByRole('img', { name: /^Stroke 170\smm; sag \d+\smm; median hit \d+\smm/ }).count(),
    ).toBe(2);
    await fork.getByText('Alternatives, reasons and assumed figures').click();
    expect(await fork.innerText()).toContain('Negative volume');
  });

  it('voids a run with its reason, shows it, and lets it count again', async () => {
    const page = await openTrack(size);
    const run = page.getByRole('row').filter({ hasText: '3:10.0' });
    await run.getByRole('button', { name: 'Void' }).click();
    await run.getByLabel('Why it does not count').fill('Chain dropped.');
    await run.getByRole('button', { name: 'Void the run' }).click();
    await run.getByText('Chain dropped.').waitFor();
    await run.getByRole('button', { name: 'Let it count again' }).click();
    await run.getByRole('button', { name: 'Void' }).waitFor();
    expect(await run.innerText()).not.toContain('Chain dropped.');
  });
});

it('takes a baseline: the way to it is in the records of the bike', async () => {
  const page = await openTrack(SIZES[0]);
  const bike = page.getByRole('article', { name: 'Rider Fern, Fern, enduro' });
  await bike.getByRole('button', { name: 'Take this baseline' }).click();
  await bike.getByLabel('Why (may stay empty)').fill('Race weekend.');
  await bike.getByRole('button', { name: 'Take it' }).click();
  await bike.getByText('Taken.').waitFor();
  await bike.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
  const history = page.getByRole('region', { name: 'What was changed, and why' });
  await history.getByText('Race weekend.').waitFor();
});

it('names each bad line of an import and stores none of it, then stores the corrected file', async () => {
  const page = await openTrack(SIZES[0]);
  await page.getByRole('link', { name: 'Import runs' }).click();
  const lines = page.getByLabel('Or paste the lines here');
  const header = 'date,track,bike,time_s,fork_travel_used_mm';
  const good = '2026-05-10,Slate Ladder,"Fern, enduro",3:01.5,131';
  await lines.fill(`${header}\n${good}\n2026-05-10,Slate Ladder,"Fern, enduro",3:02.0,400`);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('alert').getByText('1 problem. Nothing would be stored.').waitFor();
  expect(await page.getByRole('row').last().innerText()).toMatch(/3\s+fork_travel_used_mm\s+400/);
  expect(await page.getByRole('button', { name: /^Store/ }).count()).toBe(0);

  await lines.fill(`${header}\n${good}`);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: 'Store 1 run' }).click();
  await page.getByText('1 run stored.').waitFor();
});
