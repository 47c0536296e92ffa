import { Text, Title } from '@mantine/core';
import { WarningMark } from '../../../shared/ui/note.js';
import { Section } from '../../../shared/ui/page.js';
import type { Comparison } from '../api/comparison.js';
import { keyOf, runGroups } from '../model/run-groups.js';
import { texts } from '../texts.js';
import type { Series } from './dots-legend.js';
import { FeelTable } from './feel-table.js';
import { IntervalChart } from './interval-chart.js';
import { RunDots } from './run-dots.js';
import { Sections } from './sections.js';
import { Statistics } from './statistics.js';
import { Verdicts } from './verdicts.js';

interface ComparisonViewProps {
  readonly comparison: Comparison;
  readonly riderName: (id: string) => string;
  /** What a set-up is called outside a plan, long and beside a dot. */
  readonly setupName: (id: string) => { readonly label: string; readonly short: string };
}

/** A split of void runs rarer than this is worth a look: common practice, no source. */
const RARE = 0.05;

/** A comparison: verdict first, then the pictures it rests on, feel beside time, and the statistics last. */
export function ComparisonView({ comparison, riderName, setupName }: ComparisonViewProps) {
  const { arms, current, points, voids, marginPct } = comparison;
  const labelOf = ({ letter, name, setupId }: Comparison['current']) =>
    letter === null ? setupName(setupId ?? '').label : `${letter} · ${name ?? ''}`;
  const series: Series[] = [current, ...arms].map((arm) => ({
    key: keyOf(arm),
    label: labelOf(arm),
    short: arm.letter ?? setupName(arm.setupId ?? '').short,
  }));
  const groups = runGroups(points);
  return (
    <>
      <Section title={texts.verdict}>
        <Verdicts comparison={comparison} labelOf={labelOf} />
      </Section>
      {arms.some(({ lowPct }) => lowPct !== null) && (
        <Section title={texts.intervals}>
          <IntervalChart
            title={texts.intervals}
            head={texts.arm}
            rows={arms}
            marginPct={marginPct}
            labelOf={labelOf}
          />
        </Section>
      )}
      {comparison.sections.length > 0 && (
        <Section title={texts.sections}>
          <Sections comparison={comparison} labelOf={labelOf} />
        </Section>
      )}
      {groups.length > 0 && (
        <Section title={texts.dots}>
          {groups.map(({ riderId, session, points: own }) => (
            <RunDots
              key={`${riderId} ${session}`}
              title={`${riderName(riderId)}${groups.length > 1 ? texts.session(session) : ''}`}
              points={own}
              series={series}
            />
          ))}
        </Section>
      )}
      {arms.length > 0 && (
        <Section title={texts.feel}>
          <Text size="sm" c="dimmed">
            {texts.feelLead}
          </Text>
          {arms.map((arm) => (
            <div key={keyOf(arm)}>
              <Title order={3}>{texts.against(labelOf(arm), labelOf(current))}</Title>
              <FeelTable arm={arm} label={labelOf(arm)} currentLabel={labelOf(current)} />
            </div>
          ))}
        </Section>
      )}
      {voids.some(({ voided }) => voided > 0) && (
        <Section title={texts.voids}>
          {voids.map((arm) => (
            <Text key={keyOf(arm)}>
              {labelOf(arm)}: {texts.voidOf(arm.voided, arm.ridden)}{' '}
              {arm.p !== null && arm.p < RARE && <WarningMark>{texts.oddVoids}</WarningMark>}
            </Text>
          ))}
        </Section>
      )}
      <Statistics comparison={comparison} labelOf={labelOf} />
    </>
  );
}
