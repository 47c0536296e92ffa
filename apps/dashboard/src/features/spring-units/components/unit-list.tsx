import { Table } from '@mantine/core';
import { pressureRangeText } from '../../../shared/format/quantities.js';
import { formatCount, formatNumber } from '../../../shared/format/numbers.js';
import { hasLimits, type SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { TextLink } from '../../../shared/ui/link.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { figuresOf } from '../model/figures.js';
import { assumedFigures } from '../model/unit-form.js';
import { texts } from '../texts.js';

interface UnitListProps {
  readonly teamId: string;
  readonly units: readonly SpringUnit[];
  readonly canChange: boolean;
}

export function UnitList({ teamId, units, canChange }: UnitListProps) {
  return (
    <Table.ScrollContainer minWidth={640}>
      <Table>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.name}</Table.Th>
            <Table.Th>{texts.kind}</Table.Th>
            <Table.Th ta="end">{texts.stroke}</Table.Th>
            <Table.Th>{texts.limits}</Table.Th>
            <Table.Th ta="end">{texts.stock}</Table.Th>
            <Table.Th>{texts.sources}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {units.map((unit) => (
            <Table.Tr key={unit.id}>
              <Table.Td>
                {canChange ? (
                  <TextLink
                    to="/teams/$teamId/team/spring-units/$unitId"
                    params={{ teamId, unitId: unit.id }}
                  >
                    {unit.name}
                  </TextLink>
                ) : (
                  unit.name
                )}
              </Table.Td>
              <Table.Td>{unit.kind === 'fork' ? texts.fork : texts.shock}</Table.Td>
              <Table.Td ta="end">{formatNumber(unit.strokeMm, unit.strokeMm % 1 === 0 ? 0 : 1)} mm</Table.Td>
              <Table.Td>
                <Limits unit={unit} />
              </Table.Td>
              <Table.Td ta="end">{unit.spacersInStock}</Table.Td>
              <Table.Td>
                {texts.assumedCount(assumedFigures(unit).length, figuresOf(unit.kind).length)}
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}

function Limits({ unit }: { unit: SpringUnit }) {
  if (!hasLimits(unit)) return <WarningMark>{texts.noLimits}</WarningMark>;
  return texts.limitsOf(
    pressureRangeText(unit.minPressurePsi, unit.maxPressurePsi),
    formatCount(unit.maxSpacers ?? 0, 'spacer'),
  );
}
