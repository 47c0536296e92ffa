import { pressureRangeText } from '../../../shared/format/quantities.js';
import { formatCount, formatNumber } from '../../../shared/format/numbers.js';
import { hasLimits, type SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { NameLink } from '../../../shared/ui/name-link.js';
import { RecordTable } from '../../../shared/ui/record-table.js';
import { figuresOf } from '../model/figures.js';
import { assumedFigures } from '../model/unit-form.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

interface UnitListProps {
  readonly teamId: string;
  readonly units: readonly SpringUnit[];
  readonly canChange: boolean;
}

export function UnitList({ teamId, units, canChange }: UnitListProps) {
  const name = ({ id, name: text }: SpringUnit) => (
    <NameLink
      canChange={canChange}
      to="/teams/$teamId/team/spring-units/$unitId"
      params={{ teamId, unitId: id }}
    >
      {text}
    </NameLink>
  );
  return (
    <RecordTable
      rows={units}
      columns={[
        { title: texts.name, cell: name },
        { title: texts.kind, cell: ({ kind }) => (kind === 'fork' ? texts.fork : texts.shock) },
        { title: texts.stroke, isNumber: true, cell: stroke },
        { title: texts.limits, cell: limits },
        { title: texts.stock, isNumber: true, cell: ({ spacersInStock }) => spacersInStock },
        {
          title: texts.sources,
          cell: (unit) => texts.assumedCount(assumedFigures(unit).length, figuresOf(unit.kind).length),
        },
      ]}
    />
  );
}

const stroke = ({ strokeMm }: SpringUnit) =>
  withUnit(formatNumber(strokeMm, strokeMm % 1 === 0 ? 0 : 1), 'mm');

function limits(unit: SpringUnit) {
  if (!hasLimits(unit)) return <WarningMark>{texts.noLimits}</WarningMark>;
  return texts.limitsOf(
    pressureRangeText(unit.minPressurePsi, unit.maxPressurePsi),
    formatCount(unit.maxSpacers ?? 0, 'spacer'),
  );
}
