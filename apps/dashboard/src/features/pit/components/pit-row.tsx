import { Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay } from '../../../shared/format/time.js';
import { joined } from '../../../shared/http/joined.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import { lastDecisionQuery, type Decision } from '../../../shared/http/reads/decisions.js';
import { currentSetupsQuery, type EndSetup, type Setup } from '../../../shared/http/reads/setups.js';
import { hasLimits, type SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { LinkButton, TextLink } from '../../../shared/ui/link.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { QueryView } from '../../../shared/ui/query-view.js';
import { texts } from '../texts.js';
import classes from './pit.module.css';

interface PitRowProps {
  readonly teamId: string;
  readonly bike: Bike;
  readonly riderName: string;
  readonly units: readonly SpringUnit[];
  readonly canSetUp: boolean;
  /** Its open test plans. */
  readonly plans: ReactNode;
}

export function PitRow({ teamId, bike, riderName, units, canSetUp, plans }: PitRowProps) {
  const setups = useQuery(currentSetupsQuery(teamId, bike.id));
  const decisions = useQuery(lastDecisionQuery(teamId, bike.id));
  const state = joined([setups, decisions], () => ({
    setups: setups.data ?? [],
    decision: decisions.data?.[0],
  }));
  return (
    <>
      <div>
        <Title order={2} size="h3">
          <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId: bike.id }}>
            {bike.name}
          </TextLink>
        </Title>
        <Text size="sm" c="dimmed">
          {riderName} · {bike.category}
        </Text>
        {plans}
        <div className="ll-screen-only">
          <TextLink
            className={classes.way}
            to="/teams/$teamId/bikes/$bikeId/workbench"
            params={{ teamId, bikeId: bike.id }}
            aria-label={`${texts.workbench}: ${bike.name}`}
          >
            {texts.workbench}
          </TextLink>
        </div>
        {units
          .filter((unit) => !hasLimits(unit))
          .map((unit) => (
            <Text key={unit.id} size="sm">
              <WarningMark>{texts.noLimits(unit.name)}</WarningMark>
            </Text>
          ))}
      </div>
      <QueryView query={state}>
        {({ setups: [now, before], decision }) =>
          now === undefined ? (
            <NotSetUp teamId={teamId} bikeId={bike.id} canSetUp={canSetUp} />
          ) : (
            <>
              <End name={texts.fork} end={now.fork} />
              <End name={texts.shock} end={now.shock} />
              <LastChange now={now} before={before} decision={decision} />
            </>
          )
        }
      </QueryView>
    </>
  );
}

function NotSetUp({ teamId, bikeId, canSetUp }: { teamId: string; bikeId: string; canSetUp: boolean }) {
  return (
    <Stack gap="sm" align="start">
      <Text>{texts.notSetUp}</Text>
      {canSetUp && (
        <LinkButton
          variant="default"
          to="/teams/$teamId/bikes/$bikeId/new-set-up"
          params={{ teamId, bikeId }}
        >
          {texts.setUp}
        </LinkButton>
      )}
    </Stack>
  );
}

function End({ name, end }: { name: string; end: EndSetup | null }) {
  return (
    <div className={classes.end}>
      <h3>{name}</h3>
      {end === null ? <Text c="dimmed">{texts.noShock}</Text> : <EndFigures end={end} />}
    </div>
  );
}

interface LastChangeProps {
  readonly now: Setup;
  readonly before: Setup | undefined;
  readonly decision: Decision | undefined;
}

/** Since when it is so, what was changed, why, and whether anybody has said what came of it. */
function LastChange({ now, before, decision }: LastChangeProps) {
  const changes = before === undefined ? [texts.first] : setupChanges(before, now);
  const reason = decision?.toSetupId === now.id ? decision.reason : undefined;
  return (
    <div>
      <Text size="sm" c="dimmed">
        {texts.since(formatDay(now.createdAt))}: {changes.join('; ')}
      </Text>
      {reason !== undefined && <Text>“{reason}”</Text>}
      {decision !== undefined && (
        <Text size="sm" fw={decision.outcome === null ? 600 : 400}>
          {decision.outcome === null ? texts.open : texts.settled(decision.outcome)}
        </Text>
      )}
    </div>
  );
}
