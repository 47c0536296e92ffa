import { OutcomeInputDto } from '../modules/decisions/decisions.dto.js';
import type { DecisionsService } from '../modules/decisions/decisions.service.js';
import { SessionInputDto } from '../modules/sessions/sessions.dto.js';
import { RestoreInputDto, SetupInputDto } from '../modules/setups/setups.dto.js';
import type { SetUpBike } from '../modules/workbench/set-up-bike.js';
import { ChangeInputDto } from '../modules/workbench/changes.dto.js';
import type { MakeChange } from '../modules/workbench/make-change.js';
import { dated } from '../platform/database/dated.js';
import type { TeamScope } from '../platform/http/scope.js';
import { BIKES, type BikeKey } from './bikes.js';
import { checked } from './checked.js';
import { known, type DemoEquipment } from './enter-equipment.js';
import type { DemoPeople } from './enter-people.js';
import { logStint, voidLater, type RunServices } from './enter-runs.js';
import { WORKSHOP, type DemoDay, type SetUpChange, type SetUpReturn } from './scenario.js';
import type { SimulatedDay, SimulatedRun } from './simulator.js';

interface Services extends RunServices {
  readonly setUpBike: SetUpBike;
  readonly decisions: DecisionsService;
  readonly makeChange: MakeChange;
}

/** Before the first run of a day. */
const morningOf = ({ day }: SimulatedDay) => new Date(`${day.weather.day}T08:00:00Z`);
/** After the last run: what is kept is kept for what the day's runs have shown. */
const eveningOf = ({ day }: SimulatedDay) => new Date(`${day.weather.day}T20:00:00Z`);

/** Enters a season in the order in which it happened: each day its changes, its runs, and what came of the changes. */
export class SeasonEntry {
  /** Set-ups of each bike, oldest first. */
  private readonly revisions = new Map<BikeKey, string[]>();

  constructor(
    private readonly services: Services,
    private readonly people: DemoPeople,
    private readonly equipment: DemoEquipment,
  ) {}

  async enter(season: readonly SimulatedDay[]): Promise<void> {
    // The season is over: what was changed on a day is of that day, not of the moment in which it is entered here.
    for (const simulated of season) {
      await dated(morningOf(simulated), () => this.enterDay(simulated));
      await dated(eveningOf(simulated), () => this.enterKept(simulated));
    }
  }

  private async enterKept({ day }: SimulatedDay): Promise<void> {
    for (const kept of day.kept) await this.keep(this.people.mechanic, kept);
  }

  private async enterDay({ day, runs }: SimulatedDay): Promise<void> {
    const { mechanic } = this.people;
    for (const change of day.changes) await this.enterChange(mechanic, change);
    const trackId = known(this.equipment.tracks, day.track);
    const session = await this.services.sessions.create(
      mechanic,
      await checked(SessionInputDto, { ...day.weather, trackId }),
    );
    await this.enterRuns(session.id, runs);
  }

  private async enterChange(mechanic: TeamScope, change: SetUpChange | SetUpReturn): Promise<void> {
    const revisions = this.revisions.get(change.bike) ?? [];
    const { id } =
      'backToRevision' in change
        ? await this.takeBack(mechanic, change, revisions)
        : await this.setUp(mechanic, change);
    this.revisions.set(change.bike, [...revisions, id]);
  }

  private async setUp(mechanic: TeamScope, change: SetUpChange): Promise<{ id: string }> {
    const { bike, reason, fork, shock, track, inWorkshop } = change;
    if (change.atWorkbench) {
      const tried = {
        bikeId: known(this.equipment.bikes, bike),
        setupId: this.revisions.get(bike)?.at(-1) ?? null,
        trackId: track ? known(this.equipment.tracks, track) : null,
        fork,
        shock,
        reason,
      };
      return this.services.makeChange.make(mechanic, await checked(ChangeInputDto, tried));
    }
    const input = await checked(SetupInputDto, {
      bikeId: known(this.equipment.bikes, bike),
      fork,
      shock,
      filledAltitudeM: inWorkshop ? WORKSHOP.altitudeM : null,
      filledTemperatureC: inWorkshop ? WORKSHOP.temperatureC : null,
      reason,
      trackId: track ? known(this.equipment.tracks, track) : null,
    });
    return this.services.setUpBike.create(mechanic, input);
  }

  private async takeBack(
    mechanic: TeamScope,
    change: SetUpReturn,
    revisions: readonly string[],
  ): Promise<{ id: string }> {
    const id = revisions[change.backToRevision - 1];
    if (!id) throw new Error(`${change.bike} has no revision ${change.backToRevision} to go back to.`);
    const { reason } = await checked(RestoreInputDto, { reason: change.reason });
    return this.services.setUpBike.restore(mechanic, id, reason);
  }

  private async enterRuns(sessionId: string, runs: readonly SimulatedRun[]): Promise<void> {
    for (const bike of new Set(runs.map((run) => run.bike))) {
      const stint = {
        rider: known(this.people.riders, BIKES[bike].rider).scope,
        sessionId,
        bikeId: known(this.equipment.bikes, bike),
        runs: runs.filter((run) => run.bike === bike),
      };
      await logStint(this.services, stint);
      await voidLater(this.services, this.people.mechanic, stint);
    }
  }

  private async keep(mechanic: TeamScope, { bike, note }: DemoDay['kept'][number]): Promise<void> {
    const bikeId = known(this.equipment.bikes, bike);
    const { items } = await this.services.decisions.list(mechanic, { bikeId, limit: 1 });
    const newest = items[0];
    if (!newest) throw new Error(`The scenario keeps a decision about ${bike} before there is one.`);
    const outcome = await checked(OutcomeInputDto, { outcome: 'kept', note });
    await this.services.decisions.enterOutcome(mechanic, newest.id, newest.version, outcome);
  }
}
