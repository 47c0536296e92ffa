import { Table } from '@mantine/core';
import { formatChange, formatHeight, formatShare } from '../../format/numbers.js';
import type { DemandRow, Standing } from './scale.js';
import { texts } from './texts.js';

/** The strip in figures, for those who cannot see it or want the numbers. */
export function DemandTable({ rows }: { rows: readonly DemandRow[] }) {
  return (
    <details>
      <summary>{texts.table}</summary>
      <Table.ScrollContainer minWidth={720}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>{texts.rider}</Table.Th>
              <Table.Th>{texts.run}</Table.Th>
              <Table.Th ta="end">{texts.height}</Table.Th>
              <Table.Th>{texts.sort}</Table.Th>
              <Table.Th>{texts.counts}</Table.Th>
              <Table.Th>{texts.chance}</Table.Th>
              <Table.Th>{texts.pull}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.flatMap((row) =>
              row.readings.map((reading) => (
                <Table.Tr key={reading.id}>
                  <Table.Td>{row.label}</Table.Td>
                  <Table.Td>{reading.label}</Table.Td>
                  <Table.Td ta="end">{formatHeight(reading.heightM)}</Table.Td>
                  <Table.Td>{texts.kind[reading.kind]}</Table.Td>
                  <Table.Td>{reading.voided ? texts.no : texts.yes}</Table.Td>
                  <Table.Td>
                    <ChanceText standing={reading.standing} />
                  </Table.Td>
                  <Table.Td>{pullText(reading.standing)}</Table.Td>
                </Table.Tr>
              )),
            )}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </details>
  );
}

/** A chance in figures; one that deserves a second look is marked, and said to be. */
function ChanceText({ standing }: { standing: Standing | null }) {
  if (standing === null) return texts.notAsked;
  const chance = formatShare(standing.chance);
  if (!standing.surprising) return chance;
  return (
    <strong>
      <span aria-hidden="true">▲ </span>
      {chance}, {texts.lookAgain}
    </strong>
  );
}

const PER_CENT = 100;

/** What the reading does to the level, as a change of the height. */
function pullText(standing: Standing | null): string {
  if (standing === null) return texts.notAsked;
  if (standing.pull === null) return texts.bound;
  return formatChange(Math.expm1(standing.pull) * PER_CENT, 1, '%');
}
