import { Table, Text } from '@mantine/core';
import { FIGURE_NAMES } from '../../../shared/format/figure-names.js';
import { figureText, pressureRangeText } from '../../../shared/format/quantities.js';
import { formatCount } from '../../../shared/format/numbers.js';
import { hasLimits, type SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { Assumed, Warning } from '../../../shared/ui/note.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import { figuresOf } from '../model/figures.js';
import { texts } from '../texts.js';

/** Every figure the engine uses of a unit, and which of them nobody has measured. */
export function UnitFacts({ unit }: { unit: SpringUnit }) {
  return (
    <div>
      {hasLimits(unit) ? (
        <Text>
          {texts.limitsOf(
            pressureRangeText(unit.minPressurePsi, unit.maxPressurePsi),
            formatCount(unit.maxSpacers ?? 0, 'spacer'),
          )}
          ; {formatCount(unit.spacersInStock, 'spacer')} in stock
        </Text>
      ) : (
        <Warning word={texts.noLimits}>{texts.limitsHint}</Warning>
      )}
      <Scroller>
        <Table>
          <Table.Tbody>
            {figuresOf(unit.kind).map((name) => (
              <Table.Tr key={name}>
                <Table.Th scope="row" fw={400}>
                  {FIGURE_NAMES[name].label}
                </Table.Th>
                <Table.Td ta="end">
                  {figureText(unit[name], FIGURE_NAMES[name].unit)}
                  {(unit.sources[name] ?? 'assumed') === 'assumed' && <Assumed />}
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Scroller>
    </div>
  );
}
