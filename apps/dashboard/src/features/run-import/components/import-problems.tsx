import { Table } from '@mantine/core';
import { formatCount } from '../../../shared/format/numbers.js';
import { Warning } from '../../../shared/ui/note.js';
import type { ImportPreview } from '../api/preview-import.js';
import { texts } from '../texts.js';

/** Every line that cannot be taken, with what was given and what is allowed. */
export function ImportProblems({ preview }: { preview: ImportPreview }) {
  return (
    <>
      <Warning word={texts.problems(formatCount(preview.problemCount, 'problem'))} urgent>
        {texts.problemsLead}
      </Warning>
      <Table.ScrollContainer minWidth={480}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th ta="end">{texts.line}</Table.Th>
              <Table.Th>{texts.column}</Table.Th>
              <Table.Th>{texts.given}</Table.Th>
              <Table.Th>{texts.allowed}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {preview.problems.map(({ line, column, given, allowed }) => (
              <Table.Tr key={`${line} ${column} ${allowed}`}>
                <Table.Td ta="end">{line}</Table.Td>
                <Table.Td>{column === '' ? texts.wholeLine : column}</Table.Td>
                <Table.Td>{given === null || given === '' ? texts.nothing : String(given)}</Table.Td>
                <Table.Td>{allowed}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </>
  );
}
