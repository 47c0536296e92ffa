import { Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { formatMoment } from '../../../shared/format/time.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import { TextLink } from '../../../shared/ui/link.js';
import { venueText } from '../model/venue-text.js';
import { texts } from '../texts.js';
import { EndBaseline } from './end-baseline.js';
import classes from './baselines.module.css';

interface BikeBaselineProps {
  readonly teamId: string;
  readonly baseline: Baseline;
  readonly riderName: string;
  readonly bikeName: string;
  /** Whether who looks may change the team's figures. */
  readonly canChange: boolean;
  /** What can be done with it. */
  readonly action?: ReactNode;
}

/** A rider and bike on this track: fork and shock, now against the baseline. */
export function BikeBaseline(props: BikeBaselineProps) {
  const { teamId, baseline, riderName, bikeName, canChange, action } = props;
  return (
    <article className={classes.bike} aria-label={`${riderName}, ${bikeName}`}>
      <div className={classes.head}>
        <div>
          <Title order={3}>
            {riderName} ·{' '}
            <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId: baseline.bikeId }}>
              {bikeName}
            </TextLink>
          </Title>
          <Text size="sm" c="dimmed">
            {texts.computed(formatMoment(baseline.computedAt), formatCount(baseline.runCount, 'run'))}
            {baseline.venue !== null && ` ${venueText(baseline.venue)}`}
          </Text>
        </div>
        {action !== undefined && action !== false && <div className="ll-screen-only">{action}</div>}
      </div>
      <div className={classes.ends}>
        <EndBaseline teamId={teamId} name={texts.fork} end={baseline.fork} canChange={canChange} />
        {baseline.shock !== null && (
          <EndBaseline teamId={teamId} name={texts.shock} end={baseline.shock} canChange={canChange} />
        )}
      </div>
    </article>
  );
}
