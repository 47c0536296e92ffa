import { Table } from '@mantine/core';
import type { RefusedField } from '../../../shared/http/problem.js';
import { texts } from '../texts.js';

/** Every place of the file that cannot be taken, with what would be. */
export function ArchiveProblems({ fields }: { fields: readonly RefusedField[] }) {
  if (fields.length === 0) return null;
  return (
    <Table.ScrollContainer minWidth={320}>
      <Table captionSide="top">
        <Table.Caption ta="start">{texts.problems}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.where}</Table.Th>
            <Table.Th>{texts.allowed}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {fields.map(({ field, allowed }, place) => (
            <Table.Tr key={`${place} ${field}`}>
              <Table.Td>{field}</Table.Td>
              <Table.Td>{allowed}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
