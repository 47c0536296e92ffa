import { Injectable } from '@nestjs/common';
import { TeamRows } from '../../platform/database/team-rows.js';
import { BikeEntity } from './bike.entity.js';

@Injectable()
export class BikesQueries extends TeamRows<BikeEntity> {
  constructor() {
    super(BikeEntity, 'bike');
  }
}
