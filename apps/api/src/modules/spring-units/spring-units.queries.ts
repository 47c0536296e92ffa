import { Injectable } from '@nestjs/common';
import { TeamRows } from '../../platform/database/team-rows.js';
import { SpringUnitEntity } from './spring-unit.entity.js';

@Injectable()
export class SpringUnitsQueries extends TeamRows<SpringUnitEntity> {
  constructor() {
    super(SpringUnitEntity, 'spring unit');
  }
}
