import { Text } from '@mantine/core';
import { formatCount, formatNumber } from '../../../shared/format/numbers.js';
import { formatDay } from '../../../shared/format/time.js';
import { Assumed, WarningMark } from '../../../shared/ui/note.js';
import type { UnitService } from '../api/unit-service.js';
import { texts } from '../texts.js';
import classes from './unit-service.module.css';

const hoursText = (hours: number) => texts.hoursOf(formatNumber(hours, 1));

/** How much a unit was ridden since its last service, against its interval, and what that is made of. */
export function Standing({ standing }: Pick<UnitService, 'standing'>) {
  const { lastServiceDay, hoursSince, intervalHours, hoursLeft } = standing;
  return (
    <>
      <dl className={classes.figures}>
        <div>
          <dt>{texts.hours}</dt>
          <dd>{hoursText(hoursSince)}</dd>
        </div>
        <div>
          <dt>{texts.interval}</dt>
          <dd>{intervalHours === null ? texts.noInterval : hoursText(intervalHours)}</dd>
        </div>
        {hoursLeft !== null && (
          <div>
            <dt>{texts.left}</dt>
            <dd>
              {standing.isDue ? (
                <WarningMark>{texts.overdue(formatNumber(-hoursLeft, 1))}</WarningMark>
              ) : (
                hoursText(hoursLeft)
              )}
            </dd>
          </div>
        )}
      </dl>
      <Text>
        {lastServiceDay === null ? texts.neverServiced : texts.lastService(formatDay(lastServiceDay))}
      </Text>
      <table className={classes.parts}>
        <caption>{texts.madeOf}</caption>
        <tbody>
          <tr>
            <th scope="row">{texts.timed(formatCount(standing.timedRuns, 'run'))}</th>
            <td>{hoursText(standing.timedHours)}</td>
          </tr>
          {standing.assumedRuns > 0 && (
            <tr>
              <th scope="row">
                {texts.assumedRuns(formatCount(standing.assumedRuns, 'run'))} <Assumed />
              </th>
              <td>{hoursText(standing.assumedHours)}</td>
            </tr>
          )}
          <tr>
            <th scope="row">{texts.entered}</th>
            <td>{hoursText(standing.enteredHours)}</td>
          </tr>
        </tbody>
      </table>
      {standing.uncountedRuns > 0 && (
        <Text>
          <WarningMark>{texts.uncounted(formatCount(standing.uncountedRuns, 'run'))}</WarningMark>
        </Text>
      )}
      <Text size="sm" c="dimmed">
        {texts.notCounted}
      </Text>
    </>
  );
}
