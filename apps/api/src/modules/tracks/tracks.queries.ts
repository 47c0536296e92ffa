import { Injectable } from '@nestjs/common';
import { TeamRows } from '../../platform/database/team-rows.js';
import { TrackEntity } from './track.entity.js';

@Injectable()
export class TracksQueries extends TeamRows<TrackEntity> {
  constructor() {
    super(TrackEntity, 'track');
  }
}
