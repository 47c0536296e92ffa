import { Table } from '@mantine/core';
import { formatChange, formatNumber } from '../../../shared/format/numbers.js';
import type { ArmComparison, Comparison } from '../api/comparison.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

const P_DECIMALS = 3;

interface StatisticsProps {
  readonly comparison: Comparison;
  readonly labelOf: (arm: Comparison['current']) => string;
}

type Fact = readonly [name: string, value: string];

/** One level down, for who wants them. */
export function Statistics({ comparison, labelOf }: StatisticsProps) {
  const facts = [
    ...factsOfAll(comparison),
    ...comparison.arms.flatMap((arm) => factsOfArm(arm, labelOf(arm))),
  ].filter(([, value]) => value !== '');
  return (
    <details>
      <summary>{texts.statistics}</summary>
      <Table>
        <Table.Tbody>
          {facts.map(([name, value]) => (
            <Table.Tr key={name}>
              <Table.Th scope="row">{name}</Table.Th>
              <Table.Td>{value}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </details>
  );
}

function factsOfAll({
  counts,
  scatter,
  trendOverSessionPct,
  errorRatePct,
  feelComparisons,
  feelErrorRatePct,
  look,
  ofLooks,
}: Comparison): Fact[] {
  const { runs, timed, voided, untimed } = counts;
  const scatterWords =
    scatter && `${withUnit(formatNumber(scatter.scatterPct, 2), '%')}, ${texts.scatterFrom[scatter.source]}`;
  return [
    [texts.counts, texts.countsText(runs, timed, voided, untimed)],
    [texts.scatter, scatterWords ?? ''],
    [texts.trendOver, trendOverSessionPct === null ? '' : formatChange(trendOverSessionPct, 1, '%')],
    [texts.errorRate, withUnit(formatNumber(errorRatePct, 2), '%')],
    [
      texts.feelErrorRate,
      feelComparisons === 0
        ? ''
        : texts.feelErrorRateOf(formatNumber(feelErrorRatePct, 2), formatNumber(feelComparisons)),
    ],
    [texts.look, lookWords(look, ofLooks)],
  ];
}

const lookWords = (look: number | null, of: number | null): string =>
  look === null || of === null ? texts.single : texts.lookOf(formatNumber(look), formatNumber(of));

function factsOfArm(arm: ArmComparison, label: string): Fact[] {
  const p = (value: number | null) => (value === null ? '' : formatNumber(value, P_DECIMALS));
  return [
    [`${label}: ${texts.df}`, arm.df === null ? '' : formatNumber(arm.df, 1)],
    [`${label}: ${texts.pDifference}`, p(arm.pDifference)],
    [`${label}: ${texts.pEquivalence}`, p(arm.pEquivalence)],
    ...arm.feel.map((rated): Fact => [
      `${label}: ${texts.aspect[rated.aspect]}, ${texts.exactP}`,
      rated.p === null ? '' : texts.exactPAmong(p(rated.p), p(rated.pAmong)),
    ]),
  ];
}
