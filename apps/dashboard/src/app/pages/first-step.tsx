import { Button, Group } from '@mantine/core';
import { BikeForm } from '../../features/bikes/components/bike-form.js';
import type { StepName } from '../../features/first-steps/model/steps.js';
import { texts } from '../../features/first-steps/texts.js';
import { RiderForm } from '../../features/riders/components/rider-form.js';
import { SetupForm } from '../../features/setups/components/setup-form.js';
import { UnitForm } from '../../features/spring-units/components/unit-form.js';
import { TrackForm } from '../../features/tracks/components/track-form.js';
import type { Fleet } from '../../shared/http/reads/fleet.js';
import type { Track } from '../../shared/http/reads/tracks.js';
import { LinkButton } from '../../shared/ui/link.js';

/** What a team has entered so far. */
export interface FirstThings {
  readonly fleet: Fleet;
  readonly tracks: readonly Track[];
}

interface FirstStepProps {
  readonly teamId: string;
  readonly step: StepName | undefined;
  readonly things: FirstThings;
  readonly onLeaveOut: (step: StepName) => void;
}

/** What the lists show after a form is saved leads to the next step by itself. */
const onSaved = () => undefined;

/** The form of one step, the same as where it is changed later. */
export function FirstStep({ teamId, step, things, onLeaveOut }: FirstStepProps) {
  const { riders, bikes, units } = things.fleet;
  const [bike] = bikes;
  const [track] = things.tracks;
  switch (step) {
    case 'rider':
      return <RiderForm teamId={teamId} rider={undefined} onSaved={onSaved} />;
    case 'fork':
      return <UnitForm key={step} teamId={teamId} unit={undefined} kind="fork" onSaved={onSaved} />;
    case 'shock':
      return (
        <>
          <Group mb="md">
            <Button variant="default" onClick={() => onLeaveOut('shock')}>
              {texts.noShock}
            </Button>
          </Group>
          <UnitForm key={step} teamId={teamId} unit={undefined} kind="shock" onSaved={onSaved} />
        </>
      );
    case 'bike':
      return <BikeForm teamId={teamId} bike={undefined} riders={riders} units={units} onSaved={onSaved} />;
    case 'track':
      return <TrackForm teamId={teamId} track={undefined} onSaved={onSaved} />;
    case 'setup':
      return bike === undefined ? null : (
        <SetupForm
          teamId={teamId}
          bikeId={bike.id}
          start={undefined}
          fork={units.find(({ id }) => id === bike.forkUnitId)}
          shock={units.find(({ id }) => id === bike.shockUnitId)}
          tracks={things.tracks}
          onSaved={onSaved}
        />
      );
    case 'run':
      return (
        <Group>
          <LinkButton
            to="/teams/$teamId/my-bike/log-run"
            params={{ teamId }}
            search={{ ...(bike && { bikeId: bike.id }), ...(track && { trackId: track.id }) }}
          >
            {texts.logRun}
          </LinkButton>
          <LinkButton variant="default" to="/teams/$teamId/import-runs" params={{ teamId }}>
            {texts.importRuns}
          </LinkButton>
          <Button variant="default" onClick={() => onLeaveOut('run')}>
            {texts.withoutRun}
          </Button>
        </Group>
      );
    default:
      return track === undefined ? null : (
        <LinkButton to="/teams/$teamId/tracks/$trackId" params={{ teamId, trackId: track.id }}>
          {texts.seeBaseline}
        </LinkButton>
      );
  }
}
