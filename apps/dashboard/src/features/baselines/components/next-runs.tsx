import { List, Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

const metres = ({ lowM, highM }: { readonly lowM: number; readonly highM: number }) =>
  withUnit(`${formatNumber(lowM, 2)}–${formatNumber(highM, 2)}`, 'm');

/** How well the 95 % hit is known now, and would be after two more runs of each kind. */
export function NextRuns({ sharpen }: { readonly sharpen: NonNullable<EndBaseline['sharpen']> }) {
  return (
    <div>
      <Text fw={600}>{texts.sharpenTitle}</Text>
      <List>
        <List.Item>
          {texts.sharpenNow}: {metres(sharpen)}
        </List.Item>
        {sharpen.options.map((option) => (
          <List.Item key={option.kind}>
            {texts.sharpenThen(sharpen.runs, option.kind)}: {metres(option)}
          </List.Item>
        ))}
      </List>
    </div>
  );
}
