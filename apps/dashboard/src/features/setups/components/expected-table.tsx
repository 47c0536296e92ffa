import { Table } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

/** What the engine and the demand model expected when the decision was made. */
export function ExpectedTable({ expected }: { expected: NonNullable<Decision['expected']> }) {
  const ends = [
    { name: texts.fork, end: expected.fork },
    { name: texts.shock, end: expected.shock },
  ];
  return (
    <Table.ScrollContainer minWidth={320}>
      <Table captionSide="top">
        <Table.Caption ta="start">{texts.expected}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.end}</Table.Th>
            <Table.Th ta="end">{texts.sag}</Table.Th>
            <Table.Th ta="end">{texts.median}</Table.Th>
            <Table.Th ta="end">{texts.high}</Table.Th>
            <Table.Th ta="end">{texts.risk}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {ends.map(
            ({ name, end }) =>
              end !== null && (
                <Table.Tr key={name}>
                  <Table.Th scope="row">{name}</Table.Th>
                  <Table.Td ta="end">{withUnit(formatNumber(end.sagPct, 1), '%')}</Table.Td>
                  <Table.Td ta="end">{expectedText(end.medianTravelMm, 'mm')}</Table.Td>
                  <Table.Td ta="end">{expectedText(end.travel95Mm, 'mm')}</Table.Td>
                  <Table.Td ta="end">{expectedText(end.riskPct, '%', 1)}</Table.Td>
                </Table.Tr>
              ),
          )}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}

/** Without a track nothing was expected of hits. */
const expectedText = (value: number | null, unit: string, digits?: number) =>
  value === null ? texts.notExpected : withUnit(formatNumber(value, digits), unit);
