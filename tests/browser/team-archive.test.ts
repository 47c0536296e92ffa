import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, RIDER, type Person } from './support/team.js';

interface Archive {
  readonly team: { readonly name: string };
  readonly people: readonly { readonly email: string; readonly role: string }[];
  readonly records: Readonly<Record<string, Record<string, unknown>[]>>;
}
interface Run {
  readonly timeS: number;
}
interface List<Item> {
  readonly items: readonly Item[];
}

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const teamOf = (page: Page) => /\/teams\/([^/]+)/.exec(page.url())?.[1] ?? '';

async function openArchive(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Team', exact: true }).click();
  await page.getByRole('link', { name: 'Archive' }).click();
  await page.getByRole('heading', { level: 1, name: 'Archive of the team' }).waitFor();
}

async function download(page: Page): Promise<string> {
  const started = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Download the archive' }).click();
  return readFileSync(await (await started).path(), 'utf8');
}

async function take(page: Page, text: string): Promise<void> {
  await page
    .getByLabel('Archive (a .json file)')
    .setInputFiles({ name: 'team.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Make a team of it' }).click();
}

/** Somebody with a team of their own, who knows nobody of the team that the file is of. */
async function stranger(name: string): Promise<{ who: Person; caller: Caller }> {
  const who = { email: `${name}@tests.example`, password: MECHANIC.password };
  const caller = new Caller(house.address);
  await caller.post('/accounts', { ...who, displayName: `Keeper ${name}` });
  await caller.post('/teams', { name: `Team of ${name}` });
  return { who, caller };
}

const teamsOf = async (caller: Caller) =>
  (await caller.get<{ memberships: unknown[] }>('/accounts/current')).memberships.length;

describe.each(SIZES)('the archive of a team on a $name', (size) => {
  it('is one file with every record and the members, and without anything that lets somebody in', async () => {
    const page = await house.enter(MECHANIC, size);
    await openArchive(page);
    expect(await sidewaysOverflow(page)).toBe(0);
    const text = await download(page);
    const { team, people, records } = JSON.parse(text) as Archive;
    expect(team.name).toBe('Test team');
    expect(people.map(({ email }) => email).toSorted()).toEqual(
      [COACH, MECHANIC, RIDER].map(({ email }) => email),
    );
    const counts = ['rider', 'bike', 'spring_unit', 'track', 'setup', 'run'].map(
      (table) => records[table]?.length,
    );
    expect(counts).toEqual([1, 2, 4, 1, 1, 4]);
    expect(text).not.toMatch(/hash|argon2|token/i);
  });

  it('makes the same team anew for who takes it in, says who is to be invited, and leads there', async () => {
    const file = await house.enter(MECHANIC, size);
    await openArchive(file);
    const text = await download(file);

    const { who, caller } = await stranger(`taker-${size.name}`);
    const page = await house.enter(who, size);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const own = teamOf(page);
    await openArchive(page);
    await take(page, text);
    await page.getByText('Test team is here.').waitFor();
    await page
      .getByText('1 rider, 4 forks and shocks, 2 bikes, 1 set-up, 1 track, 4 runs, 1 decision')
      .waitFor();
    const invited = page.getByRole('status').getByRole('listitem');
    expect((await invited.allInnerTexts()).toSorted()).toEqual([
      'Workshop (mechanic)',
      `${COACH.email} (coach)`,
      `${RIDER.email} (rider)`,
    ]);
    expect(await sidewaysOverflow(page)).toBe(0);
    await page.getByRole('button', { name: 'Open the team' }).click();
    await page.getByRole('heading', { level: 1, name: 'Pit' }).waitFor();
    await page.getByText('Fern, enduro').first().waitFor();

    expect(teamOf(page)).not.toBe(own);
    const runs = await caller.get<List<Run>>(`/teams/${teamOf(page)}/runs`);
    expect(runs.items.map(({ timeS }) => timeS).toSorted((a, b) => a - b)).toEqual([187, 188, 189, 190]);
    expect((await caller.get<List<Run>>(`/teams/${own}/runs`)).items).toEqual([]);
  });

  it('is refused as a whole where something in it cannot be, and each place is told', async () => {
    const file = await house.enter(MECHANIC, size);
    await openArchive(file);
    const archive = JSON.parse(await download(file)) as Archive;
    const [track] = archive.records['track'] ?? [];
    const [unit] = archive.records['spring_unit'] ?? [];
    Object.assign(track ?? {}, { altitude: -9_000 });
    Object.assign(unit ?? {}, { kind: 'seat post' });

    const { who, caller } = await stranger(`refused-${size.name}`);
    const page = await house.enter(who, size);
    await openArchive(page);
    await take(page, JSON.stringify(archive));
    await page.getByRole('alert').getByText('Not taken in').waitFor();
    const places = page.getByRole('table', { name: 'What is wrong, and where' });
    await places.getByRole('cell', { name: 'records.track.0.altitude' }).waitFor();
    await places.getByRole('cell', { name: 'records.spring_unit.0.kind' }).waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);

    // What is no archive at all is refused too, and what was told of the last file is gone.
    await take(page, 'day,track,time\n2026-05-09,Slate Ladder,3:07');
    await page.getByRole('alert').getByText('Not taken in').waitFor();
    await places.waitFor({ state: 'detached' });
    expect(await teamsOf(caller)).toBe(1);
  });

  it.each([
    ['coach', COACH],
    ['rider', RIDER],
  ])('is not offered to the %s, also not at its address', async (_, who) => {
    const page = await house.enter(who, size);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const address = `${house.address}/teams/${teamOf(page)}/team/archive`;
    if (who === COACH) await page.getByRole('link', { name: 'Team', exact: true }).click();
    await page.waitForLoadState('networkidle');
    expect(await page.getByRole('link', { name: 'Archive' }).count()).toBe(0);
    await page.goto(address);
    await page.getByText('Your mechanic keeps the archive').waitFor();
    expect(await page.getByRole('link', { name: 'Download the archive' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Make a team of it' }).count()).toBe(0);
  });
});
