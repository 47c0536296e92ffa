import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLUMNS } from '../../apps/api/src/modules/runs/csv/columns.js';
import { readCellText, writeCellText } from '../../apps/api/src/platform/csv/formula-guard.js';
import { readRow } from '../../apps/api/src/modules/runs/csv/read-row.js';
import { readTable } from '../../apps/api/src/modules/runs/csv/read-table.js';
import { writeTable } from '../../apps/api/src/platform/csv/write-table.js';
import { cpuMsOf } from '../support/cpu.js';

const HEADER = 'date,track,bike,time_s,note';

function drafts(csv: string) {
  const { rows, problems } = readTable(csv);
  expect(problems).toEqual([]);
  return rows.map(readRow);
}

describe('a file of runs', () => {
  it.each([
    ['commas', ',', '\n'],
    ['semicolons', ';', '\r\n'],
    ['tabs', '\t', '\r'],
  ])('may be separated by %s, with line ends of any system and a byte-order mark', (_, separator, end) => {
    const lines = [HEADER, '2026-05-09,Stairs,B,187.4,', '2026-05-10,Stairs,B,188,x'];
    const csv = `\ufeff${lines.join(end).replaceAll(',', separator)}${end}${end}`;
    const read = drafts(csv);
    expect(read.map(({ parts }) => parts.run)).toEqual([{ timeS: 187.4 }, { timeS: 188, note: 'x' }]);
    expect(read.map(({ line }) => line)).toEqual([2, 3]);
  });

  it('takes a decimal comma and a quoted cell with separators, quotes and line breaks', () => {
    const [first, second] = drafts(
      'date;track;bike;time_s;note\n2026-05-09;Stairs;B;187,4;"a; ""b""\nc"\n2026-05-09;Stairs;B;;d',
    );
    expect(first?.parts.run).toEqual({ timeS: 187.4, note: 'a; "b"\nc' });
    expect(second).toMatchObject({ line: 4, parts: { run: { note: 'd' } } });
  });

  it('has its columns in any order and any case, and leaves empty lines out', () => {
    const read = drafts('\nBike, TRACK ,date\n\nB,Stairs,2026-05-09\n,,\n  \nB,Stairs,2026-05-10\n\n\n');
    expect(read.map(({ line, parts }) => [line, parts.session['day']])).toEqual([
      [4, '2026-05-09'],
      [7, '2026-05-10'],
    ]);
  });

  it('ignores empty cells beyond the last column, as spreadsheets add them', () => {
    const read = drafts('date,track,bike,,\n2026-05-09,Stairs,B,,\n2026-05-10,Stairs,B,,,,\n');
    expect(read).toHaveLength(2);
  });

  it.each([
    ['an unknown column', 'date,track,bike,colour\na,b,c,d', 1, 'colour'],
    ['a missing required column', 'date,bike\na,b', 1, 'track'],
    ['a column given twice', 'date,track,bike,track\na,b,c,d', 1, 'track'],
    ['an empty file', '', 1, ''],
    ['a header alone', 'date,track,bike\n', 1, ''],
    ['a line with too few cells', 'date,track,bike\n2026-05-09,Stairs', 2, ''],
    ['a line with too many cells', 'date,track,bike\n2026-05-09,Stairs,B,x', 2, ''],
    ['a quote that is never closed', 'date,track,bike\n2026-05-09,"Stairs,B', 2, ''],
    ['more than 5,000 runs', `date,track,bike\n${'2026-05-09,Stairs,B\n'.repeat(5_001)}`, 5_002, ''],
  ])('is refused for %s, naming line and column', (_, csv, line, column) => {
    expect(readTable(csv).problems).toEqual([expect.objectContaining({ line, column })]);
  });

  it.each([
    ['time_s', '3:07.4', 187.4],
    ['time_s', '12:00', 720],
    ['time_s', '3:07,4', 187.4],
    ['air_temperature_c', '\u22124', -4],
    ['start_time', '10:30', '2026-05-09T10:30:00Z'],
    ['start_time', '10:30:15+02:00', '2026-05-09T10:30:15+02:00'],
    ['start_time', '2026-05-08T23:30:00Z', '2026-05-08T23:30:00Z'],
    ['readings_count', 'Yes', true],
    ['note', "'=1+1", '=1+1'],
    ['note', "'quoted'", "'quoted'"],
  ])('reads %s %s', (column, cell, value) => {
    const [draft] = drafts(`date,track,bike,${column}\n2026-05-09,Stairs,B,"${cell}"\n`);
    expect(draft?.problems).toEqual([]);
    expect(JSON.stringify(draft?.parts)).toContain(JSON.stringify(value));
  });

  it.each([
    ['time_s', '3:75'],
    ['time_s', 'NaN'],
    ['time_s', '=1+1'],
    ['fork_spacers', '1.000,5'],
    ['fork_pressure_psi', '0x40'],
    ['fork_pressure_psi', 'Infinity'],
    ['start_time', 'noon'],
    ['readings_count', 'maybe'],
  ])('does not guess at %s %s', (column, cell) => {
    const [draft] = drafts(`date,track,bike,${column}\n2026-05-09,Stairs,B,"${cell}"\n`);
    expect(draft?.problems).toEqual([expect.objectContaining({ line: 2, column, given: cell })]);
  });
});

describe('a text cell', () => {
  it('never begins a formula as written, and reads back as it was', () => {
    const texts = fc.oneof(fc.string(), fc.stringMatching(/^'*[=+\-@'].*$/));
    fc.assert(
      fc.property(texts, (text) => {
        const cell = writeCellText(text);
        expect(cell).not.toMatch(/^[=+\-@]/);
        expect(readCellText(cell)).toBe(text);
      }),
    );
  });

  it('reads back from a file as it was, whatever it holds', () => {
    // The ends of a cell are trimmed, and line ends are told alike: neither is part of a note.
    const notes = fc.string({ minLength: 1 }).map((text) => text.replaceAll(/\r\n?/g, '\n').trim());
    fc.assert(
      fc.property(notes, (note) => {
        const csv = writeTable(['date', 'track', 'bike', 'note'], [['2026-05-09', 'T', 'B', note]]);
        const [draft] = drafts(csv);
        expect(draft?.parts.run['note'] ?? '').toBe(note);
      }),
    );
  });
});

describe('a column of a section', () => {
  it('is named by its section, with dots, commas and capitals as they are', () => {
    const [draft] = drafts(
      'date,track,bike,"SECTION_S: Steep, No. 2",section_s:Stairs\n2026-05-09,T,B,41.2,1:02.5',
    );
    expect(draft?.parts.sections).toEqual({ 'Steep, No. 2': 41.2, Stairs: 62.5 });
  });

  it('is refused twice, and without a name', () => {
    const refused = (header: string) => readTable(`date,track,bike,${header}\n2026-05-09,T,B,1,2\n`).problems;
    expect(refused('section_s: Stairs,Section_s: stairs')).not.toEqual([]);
    expect(refused('section_s:,note')).not.toEqual([]);
  });
});

describe('docs/csv.md', () => {
  const page = readFileSync(new URL('../../docs/csv.md', import.meta.url), 'utf8');

  it('has an example that can be read', () => {
    const example = /```csv\n([^`]+)```/.exec(page)?.[1] ?? '';
    const read = drafts(example);
    expect(read).toHaveLength(4);
    expect(read.flatMap(({ problems }) => problems)).toEqual([]);
  });

  it('tells every column', () => {
    expect(COLUMNS.filter(({ name }) => !page.includes(`\`${name}\``))).toEqual([]);
  });
});

it('names every column once', () => {
  expect(new Set(COLUMNS.map(({ name }) => name)).size).toBe(COLUMNS.length);
});

describe('a file made to take long', () => {
  const BYTES = 4 * 1024 * 1024;
  /** A file of the largest size that begins so and goes on with the same. */
  const filled = (begin: string, again: string) =>
    begin + again.repeat(Math.floor((BYTES - begin.length) / again.length));
  const HEADER = 'date,track,bike\n';
  const sections = (count: number) => Array.from({ length: count }, (_, i) => `section_s:${i}`).join(',');

  it.each([
    ['columns nobody knows', filled('', 'x,'), 'a longer line'],
    ['columns of sections', `${sections(200_000)}\n1`, 'a longer line'],
    ['some more columns than there may be', `${sections(1_001)}\n1`, '1001 columns'],
    ['cells', filled(HEADER, ','), 'a longer line'],
    ['an open quote', filled(`${HEADER}"`, 'a\n'), 'a longer line'],
    ['rows', filled(HEADER, 'a,b,c\n'), 'more than 10000 lines'],
    ['rows of line breaks', filled(HEADER, '"\n",\n'), 'more than 10000 lines'],
    ['rows without anything', filled(HEADER, ',,\n'), 'more than 10000 lines'],
    ['line breaks', filled('', '\n'), 'an empty file'],
    ['spaces', filled('', ' '), 'a longer line'],
    ['spaces after line breaks', filled(HEADER + '\n'.repeat(BYTES / 2), ' '), 'a longer line'],
    ['quotes', filled(HEADER, '"'), 'a longer line'],
  ])('of %s is refused at once', async (_, csv, given) => {
    const cost = await cpuMsOf(() =>
      expect(readTable(csv).problems).toEqual([expect.objectContaining({ given })]),
    );
    expect(cost).toBeLessThan(1_000);
  });
});
