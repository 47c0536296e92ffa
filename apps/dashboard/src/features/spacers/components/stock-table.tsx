import { formatNumber } from '../../../shared/format/numbers.js';
import { RecordTable } from '../../../shared/ui/record-table.js';
import type { SpacerStock } from '../api/spacers.js';
import { texts } from '../texts.js';

interface StockTableProps {
  readonly stocks: readonly SpacerStock[];
  readonly unitName: (id: string) => string;
}

/** What lies in the box, by size, and which units take it. */
export function StockTable({ stocks, unitName }: StockTableProps) {
  return (
    <RecordTable
      caption={texts.caption}
      rows={stocks.map((stock) => ({ ...stock, id: `${stock.unitKind} ${stock.spacerVolumeMl}` }))}
      columns={[
        {
          title: texts.size,
          cell: ({ unitKind, spacerVolumeMl }) => texts.sizeOf(unitKind, formatNumber(spacerVolumeMl, 1)),
        },
        { title: texts.inStock, isNumber: true, cell: ({ inStock }) => inStock },
        {
          title: texts.fits,
          cell: ({ unitIds }) => (unitIds.length === 0 ? texts.noUnit : unitIds.map(unitName).join('; ')),
        },
      ]}
    />
  );
}
