import { Text } from '@mantine/core';
import type { ReactNode } from 'react';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay, formatRunTime } from '../../../shared/format/time.js';
import { LinkButton, TextLink } from '../../../shared/ui/link.js';
import type { PitBike, PitRun } from '../api/pit.js';
import { texts } from '../texts.js';
import { PitEnd } from './pit-end.js';
import classes from './pit.module.css';

interface PitRowProps {
  readonly teamId: string;
  readonly bike: PitBike;
  readonly canSetUp: boolean;
}

/** One bike: a row of the table, a card on the phone. */
export function PitRow({ teamId, bike, canSetUp }: PitRowProps) {
  const { setup, decision } = bike;
  return (
    <tr role="row" className={classes.row}>
      <th role="rowheader" scope="row" className={classes.bike}>
        <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId: bike.bikeId }}>
          {bike.name}
        </TextLink>
        <Text size="sm" c="dimmed" fw={400}>
          {bike.riderName} · {bike.category}
        </Text>
        <div className="ll-screen-only">
          <TextLink
            className={classes.way}
            to="/teams/$teamId/bikes/$bikeId/workbench"
            params={{ teamId, bikeId: bike.bikeId }}
            aria-label={`${texts.workbench}: ${bike.name}`}
          >
            {texts.workbench}
          </TextLink>
        </div>
      </th>
      <Cell name={texts.fork}>
        <PitEnd teamId={teamId} end={bike.fork} fill={setup?.fork ?? null} />
      </Cell>
      <Cell name={texts.shock}>
        <PitEnd teamId={teamId} end={bike.shock} fill={setup?.shock ?? null} />
      </Cell>
      <Cell name={texts.since}>
        {setup === null ? (
          <NotSetUp teamId={teamId} bike={bike} canSetUp={canSetUp} />
        ) : (
          <Since bike={bike} />
        )}
      </Cell>
      <Cell name={texts.waits}>
        {decision !== null && decision.outcome === null && <Text fw={600}>{texts.open}</Text>}
        <Work teamId={teamId} bike={bike} />
        <Plans teamId={teamId} bike={bike} />
        {isIdle(bike) && <Text c="dimmed">{texts.nothingWaits}</Text>}
      </Cell>
      <Cell name={texts.lastRun}>
        {bike.lastRun === null ? (
          <Text c="dimmed">{texts.noRun}</Text>
        ) : (
          <LastRun run={bike.lastRun} setupId={setup?.id} />
        )}
      </Cell>
    </tr>
  );
}

/** Its name stands above it where the head of the table is not to be seen. */
function Cell({ name, children }: { name: string; children: ReactNode }) {
  return (
    <td role="cell">
      <span className={classes.name} aria-hidden="true">
        {name}
      </span>
      {children}
    </td>
  );
}

function NotSetUp({ teamId, bike, canSetUp }: PitRowProps) {
  return (
    <>
      <Text mb="xs">{texts.notSetUp}</Text>
      {canSetUp && (
        <LinkButton
          variant="default"
          to="/teams/$teamId/bikes/$bikeId/new-set-up"
          params={{ teamId, bikeId: bike.bikeId }}
          aria-label={`${texts.setUp}: ${bike.name}`}
        >
          {texts.setUp}
        </LinkButton>
      )}
    </>
  );
}

/** Since when it is so, what was changed, and why. */
function Since({ bike: { setup, previousSetup, decision } }: { bike: PitBike }) {
  if (setup === null) return null;
  const changes = previousSetup === null ? [texts.first] : setupChanges(previousSetup, setup);
  return (
    <>
      <Text size="sm" c="dimmed">
        {texts.sinceDay(formatDay(setup.createdAt))}
        {changes.length > 0 && `: ${changes.join('; ')}`}
      </Text>
      {decision?.toSetupId === setup.id && <Text>“{decision.reason}”</Text>}
      {decision !== null && decision.outcome !== null && (
        <Text size="sm">{texts.settled(decision.outcome)}</Text>
      )}
    </>
  );
}

const isIdle = ({ decision, plans, work }: PitBike) =>
  plans.length === 0 && work.length === 0 && (decision === null || decision.outcome !== null);

function Work({ teamId, bike: { name, work } }: Pick<PitRowProps, 'teamId' | 'bike'>) {
  return work.map(({ id, done, all }) => (
    <div key={id}>
      <TextLink
        to="/teams/$teamId/work-orders/$orderId"
        params={{ teamId, orderId: id }}
        aria-label={`${name}: ${texts.work(done, all)}`}
      >
        {texts.work(done, all)}
      </TextLink>
    </div>
  ));
}

function Plans({ teamId, bike: { plans } }: Pick<PitRowProps, 'teamId' | 'bike'>) {
  return plans.map(({ id, name, riderId, ridden, left }) => (
    <div key={`${id} ${riderId}`}>
      <TextLink
        to="/teams/$teamId/test-plans/$planId"
        params={{ teamId, planId: id }}
        search={{ riderId }}
        aria-label={texts.planOf(name, texts.plan(ridden, ridden + left))}
      >
        {texts.plan(ridden, ridden + left)}
      </TextLink>
    </div>
  ));
}

function LastRun({ run, setupId }: { run: PitRun; setupId: string | undefined }) {
  const remarks = [run.isVoid ? texts.isVoid : '', run.setupId === setupId ? '' : texts.onOlder];
  return (
    <>
      <Text className={classes.time}>{run.timeS === null ? texts.notTimed : formatRunTime(run.timeS)}</Text>
      <Text size="sm" c="dimmed">
        {[run.trackName, formatDay(run.day), ...remarks].filter((word) => word !== '').join(' · ')}
      </Text>
    </>
  );
}
