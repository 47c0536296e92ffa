import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../../platform/database/team-database.js';
import type { TeamScope } from '../../../platform/http/scope.js';
import { BikesService } from '../../bikes/bikes.service.js';
import { RidersService } from '../../riders/riders.service.js';
import { TracksService } from '../../tracks/tracks.service.js';
import { NameBook } from './name-book.js';
import type { NameBooks } from './run-messages.js';

/** The names that a file of the team may use. */
@Injectable()
export class TeamNames {
  constructor(
    private readonly riders: RidersService,
    private readonly bikes: BikesService,
    private readonly tracks: TracksService,
  ) {}

  async books(transaction: Transaction, scope: TeamScope): Promise<NameBooks> {
    return {
      tracks: new NameBook('a track of this team', await this.tracks.all(transaction, scope.teamId)),
      bikes: new NameBook('a bike of this team', await this.bikes.allVisible(transaction, scope)),
      riders: new NameBook('a rider of this team', await this.riders.all(transaction, scope.teamId)),
    };
  }
}
