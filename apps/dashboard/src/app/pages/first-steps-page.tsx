import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { StepList } from '../../features/first-steps/components/step-list.js';
import { stepNow, type Entered, type StepName } from '../../features/first-steps/model/steps.js';
import { texts } from '../../features/first-steps/texts.js';
import { joined } from '../../shared/http/joined.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { runsQuery, type Run } from '../../shared/http/reads/runs.js';
import { currentSetupsQuery, type Setup } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { FirstStep, type FirstThings } from './first-step.js';

/** The way of a team that has nothing yet to its first baseline. */
export function FirstStepsPage() {
  const { teamId } = useMembership().membership;
  const fleet = useFleet(teamId);
  const tracks = useQuery(tracksQuery(teamId));
  const lists = joined([fleet, tracks], () => ({ fleet: fleet.data, tracks: tracks.data ?? [] }));
  return (
    <Page title={texts.title} lead={texts.lead}>
      <QueryView query={lists}>
        {({ fleet: all, tracks: known }) =>
          all !== undefined && <Steps teamId={teamId} things={{ fleet: all, tracks: known }} />
        }
      </QueryView>
    </Page>
  );
}

function Steps({ teamId, things }: { teamId: string; things: FirstThings }) {
  const { role } = useMembership().membership;
  const [leftOut, setLeftOut] = useState<ReadonlySet<StepName>>(new Set());
  const bikeId = things.fleet.bikes[0]?.id ?? '';
  const setups = useQuery({ ...currentSetupsQuery(teamId, bikeId), enabled: bikeId !== '' });
  const runs = useInfiniteQuery({ ...runsQuery(teamId, {}), enabled: bikeId !== '' });
  const records = joined(bikeId === '' ? [] : [setups, runs], () => ({
    setup: setups.data?.[0],
    runs: runs.data ?? [],
  }));
  return (
    <QueryView query={records}>
      {({ setup, runs: ridden }) => {
        const entered = enteredOf(things, setup, ridden);
        const now = stepNow(entered, leftOut);
        return (
          <StepList entered={entered} leftOut={leftOut} now={now}>
            {role === 'mechanic' ? (
              <FirstStep
                teamId={teamId}
                step={now}
                things={things}
                onLeaveOut={(step) => setLeftOut(new Set([...leftOut, step]))}
              />
            ) : (
              <p>{texts.onlyMechanic}</p>
            )}
          </StepList>
        );
      }}
    </QueryView>
  );
}

/** What the team has of each step, by the name of the first. */
function enteredOf({ fleet, tracks }: FirstThings, setup: Setup | undefined, runs: readonly Run[]): Entered {
  const { riders, bikes, units } = fleet;
  const hasNoShock = bikes[0]?.shockUnitId === null;
  return {
    rider: riders[0]?.name ?? null,
    fork: units.find(({ kind }) => kind === 'fork')?.name ?? null,
    shock: units.find(({ kind }) => kind === 'shock')?.name ?? (hasNoShock ? texts.none : null),
    bike: bikes[0]?.name ?? null,
    track: tracks[0]?.name ?? null,
    setup: setup === undefined ? null : texts.revision(setup.revision),
    run: runs.length === 0 ? null : texts.runs(runs.length),
  };
}
