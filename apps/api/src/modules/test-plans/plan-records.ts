import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { BikesService } from '../bikes/bikes.service.js';
import { RidersService } from '../riders/riders.service.js';
import { SessionsService } from '../sessions/sessions.service.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { TracksService } from '../tracks/tracks.service.js';
import type { TestPlanInputDto } from './test-plan-input.dto.js';
import { PlaceUnclear } from './test-plans.errors.js';

/** Reads the records that a plan refers to: all must be the team's. */
@Injectable()
export class PlanRecords {
  constructor(
    private readonly tracks: TracksService,
    private readonly sessions: SessionsService,
    private readonly riders: RidersService,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
  ) {}

  /** Where the plan is ridden. @throws PlaceUnclear, NotFound */
  async placeOf(transaction: Transaction, teamId: string, input: TestPlanInputDto) {
    if (input.sessionId) {
      const session = await this.sessions.require(transaction, teamId, input.sessionId);
      return { trackId: session.trackId, sessionId: session.id, day: session.day };
    }
    if (!input.trackId) throw new PlaceUnclear();
    const track = await this.tracks.require(transaction, teamId, input.trackId);
    return { trackId: track.id, sessionId: null, day: input.day ?? null };
  }

  /** The set-ups of all arms by their ids; riders and bikes are there too. @throws NotFound */
  async setupsOf(
    transaction: Transaction,
    teamId: string,
    { riders, arms }: TestPlanInputDto,
  ): Promise<ReadonlyMap<string, Setup>> {
    for (const { riderId, bikeId } of riders) {
      await this.riders.require(transaction, teamId, riderId);
      await this.bikes.require(transaction, teamId, bikeId);
    }
    const stored = new Map<string, Setup>();
    for (const { setupId } of arms.flatMap(({ setups }) => setups)) {
      stored.set(setupId, await this.setups.require(transaction, teamId, setupId));
    }
    return stored;
  }
}
