import { Injectable } from '@nestjs/common';
import { In, type FindOptionsWhere } from 'typeorm';
import { TeamRows } from '../../platform/database/team-rows.js';
import { BikeEntity } from './bike.entity.js';

@Injectable()
export class BikesQueries extends TeamRows<BikeEntity> {
  constructor() {
    super(BikeEntity, 'bike');
  }

  /** The filter of rows about one of these bikes. */
  rowsAbout(bikeIds: readonly string[]): FindOptionsWhere<{ bikeId: string }> {
    return { bikeId: In([...bikeIds]) };
  }
}
