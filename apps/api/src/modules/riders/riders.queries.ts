import { Injectable } from '@nestjs/common';
import { TeamRows } from '../../platform/database/team-rows.js';
import { RiderEntity } from './rider.entity.js';

@Injectable()
export class RidersQueries extends TeamRows<RiderEntity> {
  constructor() {
    super(RiderEntity, 'rider');
  }
}
