import { Text, Title } from '@mantine/core';
import type { Comparison } from '../api/comparison.js';
import { keyOf } from '../model/run-groups.js';
import { texts } from '../texts.js';
import { IntervalChart } from './interval-chart.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';

interface SectionsProps {
  readonly comparison: Comparison;
  readonly labelOf: (arm: Comparison['current']) => string;
}

/** Where on the track each differs from the current one: a question beside the verdict on the whole run. */
export function Sections({ comparison, labelOf }: SectionsProps) {
  const { arms, current, marginPct, sections } = comparison;
  return (
    <>
      <Text size="sm" c="dimmed">
        {texts.sectionsLead}
      </Text>
      {arms.map((arm) => {
        const title = texts.against(labelOf(arm), labelOf(current));
        const rows = sections.flatMap(({ section, arms: own }) =>
          own.filter((entry) => keyOf(entry) === keyOf(arm)).map((entry) => ({ ...entry, section })),
        );
        return (
          <div key={keyOf(arm)}>
            <Title order={3}>{title}</Title>
            {rows.some(({ lowPct }) => lowPct !== null) && (
              <IntervalChart
                title={`${texts.sections}: ${title}`}
                head={texts.section}
                rows={rows}
                marginPct={marginPct}
                labelOf={({ section }) => section}
              />
            )}
            <ul>
              {rows.map(({ section, verdict, sentence }) => (
                <li key={section}>
                  {section}: <strong>{verdict}</strong>. {wholeInChosenUnits(sentence)}
                </li>
              ))}
            </ul>
          </div>
        );
      })}
    </>
  );
}
