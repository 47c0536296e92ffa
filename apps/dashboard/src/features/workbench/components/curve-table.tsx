import { Table } from '@mantine/core';
import { useState } from 'react';
import { formatChange, formatNumber } from '../../../shared/format/numbers.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import type { CurvePoint, CurveQuantity } from '../model/curves.js';
import { texts } from '../texts.js';

interface CurveTableProps {
  readonly quantity: CurveQuantity;
  readonly unit: string;
  readonly decimals: number;
  readonly now: readonly CurvePoint[];
  readonly proposed: readonly CurvePoint[] | null;
}

/** Every twentieth of the stroke. */
const ROW_STEP = 6;

/** A curve in figures; made when it is opened, so that a press of the stepper does not draw what nobody sees. */
export function CurveTable({ quantity, unit, decimals, now, proposed }: CurveTableProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="ll-screen-only" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{texts.chartTable}</summary>
      {open && (
        <Scroller>
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Th>{texts.travelAxis}</Table.Th>
                <Table.Th ta="end">{`${texts.now}, ${unit}`}</Table.Th>
                <Table.Th ta="end">{`${texts.proposed}, ${unit}`}</Table.Th>
                <Table.Th ta="end">{texts.change}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {now.map((point, index) => {
                if (index % ROW_STEP !== 0) return null;
                const other = proposed?.[index]?.[quantity];
                return (
                  <Table.Tr key={index}>
                    <Table.Th scope="row">{formatNumber(point.travelMm, 1)}</Table.Th>
                    <Table.Td ta="end">{formatNumber(point[quantity], decimals)}</Table.Td>
                    <Table.Td ta="end">
                      {other === undefined ? texts.none : formatNumber(other, decimals)}
                    </Table.Td>
                    <Table.Td ta="end">
                      {other !== undefined && formatChange(other - point[quantity], decimals)}
                    </Table.Td>
                  </Table.Tr>
                );
              })}
            </Table.Tbody>
          </Table>
        </Scroller>
      )}
    </details>
  );
}
