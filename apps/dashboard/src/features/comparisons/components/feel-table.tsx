import { Table } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { ArmComparison } from '../api/comparison.js';
import { texts } from '../texts.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';

interface FeelTableProps {
  readonly arm: ArmComparison;
  readonly label: string;
  readonly currentLabel: string;
}

/** How one felt against the current one, aspect by aspect. */
export function FeelTable({ arm, label, currentLabel }: FeelTableProps) {
  return (
    <Table.ScrollContainer minWidth={640}>
      <Table>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.aspectHead}</Table.Th>
            <Table.Th>{currentLabel}</Table.Th>
            <Table.Th>{label}</Table.Th>
            <Table.Th>{texts.ratedHigher}</Table.Th>
            <Table.Th>{texts.says}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {arm.feel.map((rated) => (
            <Table.Tr key={rated.aspect}>
              <Table.Td>{texts.aspect[rated.aspect]}</Table.Td>
              <Table.Td>{medianWords(rated.currentMedian, rated.currentRatings)}</Table.Td>
              <Table.Td>{medianWords(rated.median, rated.ratings)}</Table.Td>
              <Table.Td>{pairWords(rated.superiority)}</Table.Td>
              <Table.Td>{wholeInChosenUnits(rated.sentence)}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}

const medianWords = (median: number | null, ratings: number): string =>
  median === null
    ? texts.notRated
    : texts.ratings(formatNumber(median, Number.isInteger(median) ? 0 : 1), ratings);

const PAIRS = 100;

const pairWords = (superiority: number | null): string =>
  superiority === null ? texts.noPairs : texts.inPairs(formatNumber(superiority * PAIRS));
