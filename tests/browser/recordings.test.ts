import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { GATES, gpxOf, segmentOf } from '../support/recording.js';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { COACH } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

async function openTrack(size: Size): Promise<Page> {
  const page = await house.enter(COACH, size);
  await page.getByRole('link', { name: 'Slate Ladder' }).click();
  await page.getByRole('heading', { level: 1, name: 'Slate Ladder' }).waitFor();
  return page;
}

const { startGate, finishGate } = GATES;
const ENDS = {
  'Start gate, one end': `${startGate.fromLatitudeDeg}, ${startGate.fromLongitudeDeg}`,
  'Start gate, other end': `${startGate.toLatitudeDeg}, ${startGate.toLongitudeDeg}`,
  'Finish gate, one end': `${finishGate.fromLatitudeDeg}, ${finishGate.fromLongitudeDeg}`,
  'Finish gate, other end': `${finishGate.toLatitudeDeg}, ${finishGate.toLongitudeDeg}`,
};

async function chooseFile(page: Page, gpx: string) {
  const file = { name: 'day.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(gpx) };
  await page.getByLabel('GPX file').setInputFiles(file);
  await page
    .getByRole('region', { name: 'From a position recording' })
    .getByRole('button', { name: 'Check the file' })
    .click();
}

it('leads to where gates are entered as long as no track has both', async () => {
  const page = await openTrack(SIZES[1]);
  await page.getByRole('link', { name: 'Import runs' }).click();
  await page.getByRole('link', { name: 'Enter the gates of Slate Ladder' }).click();
  await page.getByLabel('Start gate, one end').waitFor();
});

describe.each(SIZES)('a recording on a $name', (size) => {
  it('is cut between the gates of the track, shown with what its times are good to, and stored', async () => {
    const page = await openTrack(size);
    await page.getByRole('link', { name: 'Change the track' }).click();
    await page.getByLabel('Start gate, one end').fill('at the top');
    await page.getByRole('button', { name: 'Save the track' }).click();
    await page.getByText('As a map gives it: 46.50211, 8.10347').first().waitFor();
    for (const [label, place] of Object.entries(ENDS)) await page.getByLabel(label).fill(place);
    expect(await sidewaysOverflow(page)).toBe(0);
    await page.getByRole('button', { name: 'Save the track' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    await page.getByRole('link', { name: 'Slate Ladder' }).click();
    await page.getByRole('link', { name: 'Import runs' }).click();
    const day = size.name === 'phone' ? '2026-05-16' : '2026-05-17';
    const gpx = gpxOf(segmentOf(`${day}T10:30:00Z`, 8), segmentOf(`${day}T11:00:00Z`, 10));
    await chooseFile(page, gpx);
    const runs = page.getByRole('table', { name: /^Runs between the gates/ });
    await runs.waitFor();
    expect(await runs.innerText()).toMatch(/1:15\.0\s+±1\.0\ss/);
    expect(await runs.innerText()).toMatch(/1:00\.0\s+±0\.8\ss/);
    await page.getByLabel('A position is good to').fill('6');
    await runs.waitFor({ state: 'detached' });
    await chooseFile(page, gpx);
    await runs.getByText('±2.1 s').waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
    await page.getByRole('button', { name: 'Store 2 runs' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('2 runs stored.').waitFor();
    await chooseFile(page, gpx);
    await page.getByText('is stored already.').first().waitFor();
    expect(await page.getByRole('button', { name: 'Store 2 runs' }).count()).toBe(0);
    await chooseFile(page, '<!DOCTYPE gpx><gpx version="1.1"/>');
    await page.getByText(/without a document type/).waitFor();
  });

  it('is not checked once its file is no longer chosen, or cannot be read', async () => {
    const page = await openTrack(size);
    await page.getByRole('link', { name: 'Import runs' }).click();
    const recording = page.getByRole('region', { name: 'From a position recording' });
    const check = recording.getByRole('button', { name: 'Check the file' });
    const isOpen = () => check.isEnabled();
    await chooseFile(page, gpxOf(segmentOf('2026-05-20T10:30:00Z', 8)));
    await page.getByRole('table', { name: /^Runs between the gates/ }).waitFor();
    await page.getByLabel('GPX file').setInputFiles([]);
    await expect.poll(isOpen).toBe(false);
    expect(await page.getByRole('table', { name: /^Runs between the gates/ }).count()).toBe(0);
    // As of a file that was moved or changed after it was chosen.
    await page.evaluate('File.prototype.text = () => Promise.reject(new Error("gone"))');
    await page.getByLabel('GPX file').setInputFiles({
      name: 'day.gpx',
      mimeType: 'application/gpx+xml',
      buffer: Buffer.from('<gpx/>'),
    });
    await recording.getByRole('alert').getByText('The file cannot be read here. Choose it again.').waitFor();
    expect(await isOpen()).toBe(false);
  });
});
