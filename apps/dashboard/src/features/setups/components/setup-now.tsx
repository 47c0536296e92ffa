import { Text } from '@mantine/core';
import { formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { texts } from '../texts.js';
import classes from './setups.module.css';

/** What is in the bike now. */
export function SetupNow({ setup }: { setup: Setup }) {
  const { filledAltitudeM, filledTemperatureC } = setup;
  return (
    <div className={classes.now}>
      <div>
        <h3>{texts.fork}</h3>
        <EndFigures end={setup.fork} big />
      </div>
      <div>
        <h3>{texts.shock}</h3>
        {setup.shock === null ? (
          <Text c="dimmed">{texts.noShock}</Text>
        ) : (
          <EndFigures end={setup.shock} big />
        )}
      </div>
      <Text size="sm" c="dimmed" className={classes.wide}>
        {texts.revision(setup.revision)}, {texts.since(formatDay(setup.createdAt))}
        {filledAltitudeM !== null &&
          filledTemperatureC !== null &&
          `, ${texts.pumpedAt(formatNumber(filledAltitudeM), temperatureText(filledTemperatureC))}`}
        {setup.note !== '' && ` · ${setup.note}`}
      </Text>
    </div>
  );
}
