import { Table } from '@mantine/core';
import { formatChange, formatNumber, formatShare } from '../../../shared/format/numbers.js';
import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { fillText } from '../../../shared/format/fill.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

const PER_CENT = 100;
const inBrackets = (change: string) => ` (${change})`;

/** What else would do, each with what it costs against the baseline in brackets. */
export function Alternatives({ alternatives }: Pick<EndBaseline, 'alternatives'>) {
  return (
    <Table.ScrollContainer minWidth={640}>
      <Table captionSide="top">
        <Table.Caption ta="start">{texts.alternatives}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.alternative}</Table.Th>
            <Table.Th>{texts.fill}</Table.Th>
            <Table.Th ta="end">{texts.sag}</Table.Th>
            <Table.Th ta="end">{texts.left}</Table.Th>
            <Table.Th ta="end">{texts.riskShort}</Table.Th>
            <Table.Th ta="end">{texts.early}</Table.Th>
            <Table.Th ta="end">{texts.braking}</Table.Th>
            <Table.Th>{texts.breaks}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {alternatives.map(({ kind, fill, cost, breaks }) => (
            <Table.Tr key={kind}>
              <Table.Th scope="row">{kind}</Table.Th>
              <Table.Td>{fillText(fill)}</Table.Td>
              <Table.Td ta="end">
                {withUnit(formatNumber(fill.sagPct, 1), '%')}
                {cost !== null && inBrackets(formatChange(cost.sagPct, 1))}
              </Table.Td>
              <Table.Td ta="end">
                {withUnit(formatNumber(fill.reserve95Mm), 'mm')}
                {cost !== null && inBrackets(formatChange(cost.reserve95Mm))}
              </Table.Td>
              <Table.Td ta="end">{formatShare(fill.riskPct / PER_CENT)}</Table.Td>
              <Table.Td ta="end">{cost !== null && formatChange(cost.earlyForceN, 0, 'N')}</Table.Td>
              <Table.Td ta="end">
                {fill.brakingTravelMm !== null && withUnit(formatNumber(fill.brakingTravelMm), 'mm')}
                {cost?.brakingTravelMm != null && inBrackets(formatChange(cost.brakingTravelMm))}
              </Table.Td>
              <Table.Td>{breaks.length === 0 ? texts.meetsAll : breaks.join(', ')}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
