import { Text } from '@mantine/core';
import { formatCount, formatNumber, pressureText, pumpable } from '../../../shared/format/numbers.js';
import type { EndSetup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { TextLink } from '../../../shared/ui/link.js';
import { WarningMark } from '../../../shared/ui/note.js';
import type { PitEnd as End } from '../api/pit.js';
import { texts } from '../texts.js';
import classes from './pit.module.css';

interface PitEndProps {
  readonly teamId: string;
  readonly end: End | null;
  /** What the set-up has there; null before the first. */
  readonly fill: EndSetup | null;
}

/** One end of a bike: what it was filled with, what to pump to today, and what it needs. */
export function PitEnd({ teamId, end, fill }: PitEndProps) {
  if (end === null) return <Text c="dimmed">{texts.noShock}</Text>;
  return (
    <>
      {fill !== null && (
        <>
          <EndFigures end={fill} />
          <Today end={end} />
        </>
      )}
      <Spacers spacers={end.spacers} />
      <Service teamId={teamId} end={end} />
      {!end.hasLimits && (
        <Text size="sm">
          <WarningMark>{texts.noLimits(end.unitName)}</WarningMark>
        </Text>
      )}
    </>
  );
}

function Today({ end: { today, hasLimits } }: { end: End }) {
  if (today === null) return null;
  const alone = texts.leftAlone(pressureText(today.leftAlonePsi));
  return (
    <>
      {today.pumpToPsi !== null && (
        <Text className={classes.pumpTo}>{texts.pumpTo(pressureText(pumpable(today.pumpToPsi)))}</Text>
      )}
      {today.whyNot !== null && hasLimits && (
        <Text size="sm">
          <WarningMark>{texts.whyNot[today.whyNot]}</WarningMark>
        </Text>
      )}
      <Text size="sm" c="dimmed">
        {alone}
      </Text>
    </>
  );
}

function Spacers({ spacers: { needed, inStock, isShort } }: Pick<End, 'spacers'>) {
  if (needed === 0) return null;
  return (
    <Text size="sm">
      {texts.spacersNeeded(formatCount(needed, 'spacer'), inStock)}
      {isShort && (
        <>
          {'. '}
          <WarningMark>{texts.short}</WarningMark>
        </>
      )}
    </Text>
  );
}

/** Hours since service against the interval; leads to what they are made of. */
function Service({ teamId, end: { unitId, unitName, service } }: { teamId: string; end: End }) {
  const words = serviceWords(service);
  return (
    <div className={classes.service}>
      <TextLink
        size="sm"
        to="/teams/$teamId/spring-units/$unitId/service"
        params={{ teamId, unitId }}
        aria-label={texts.serviceOf(unitName, words)}
      >
        {words}
      </TextLink>
      {service.isDue && (
        <>
          {' '}
          <WarningMark>{texts.due}</WarningMark>
        </>
      )}
    </div>
  );
}

function serviceWords({ hoursSince, intervalHours, lastServiceDay }: End['service']): string {
  const since = formatNumber(hoursSince, 1);
  if (intervalHours !== null) return texts.service(since, formatNumber(intervalHours));
  return lastServiceDay === null ? texts.serviceNever(since) : texts.serviceOpen(since);
}
