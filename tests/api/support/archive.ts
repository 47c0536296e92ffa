import type { Member } from './member.js';

export type Row = Record<string, unknown> & { id: string };

export interface Archive {
  exportedAt: string;
  team: { name: string; evidenceVersion: number };
  people: {
    id: string;
    displayName: string | null;
    email: string | null;
    role: string | null;
    riderId: string | null;
  }[];
  records: Record<string, Row[]>;
}

/** The archive of a team, as its mechanic downloads it. */
export async function archiveOf(team: { mechanic: Member; path: string }): Promise<Archive> {
  const answer = await team.mechanic
    .get(`${team.path}/archive`)
    .buffer(true)
    .parse((response, done) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(Buffer.from(part)));
      response.on('end', () => done(null, JSON.parse(Buffer.concat(parts).toString('utf8'))));
    })
    .expect(200);
  return answer.body as Archive;
}

/** The same with each id by its place, so that archives can be compared: ids of people by their address. */
export function alike(archive: Archive): unknown {
  const places = new Map<string, string>();
  const people = archive.people.toSorted((a, b) => (a.email ?? '').localeCompare(b.email ?? ''));
  for (const { id, email } of people) places.set(id, `person ${email}`);
  for (const [table, rows] of Object.entries(archive.records))
    rows.forEach(({ id }, i) => places.set(id, `${table} ${i}`));
  const text = JSON.stringify({ ...archive, people, exportedAt: '' });
  return JSON.parse(
    text.replaceAll(/[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}/g, (id) => places.get(id) ?? id),
  );
}

/** A copy that was tampered with. */
export function changed(archive: Archive, tamper: (draft: Archive) => void): Archive {
  const draft = structuredClone(archive);
  tamper(draft);
  return draft;
}

export function rowOf(archive: Archive, table: string, place = 0): Row {
  const row = archive.records[table]?.[place];
  if (!row) throw new Error(`The archive has no ${table} ${place}.`);
  return row;
}
