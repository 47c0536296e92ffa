import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import type { QuestionEnd } from '../spring/question-end.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { brakingOf } from './bike-braking.js';
import { unitAt } from './bike-end.js';
import type { BikeEndPath } from './bike-end-path.js';
import { bikeQuestionEnd } from './bike-question-end.js';
import { BikeRecordsReader, type BikeRecords } from './bike-records.js';
import type { BikeBrakingDto, EndsQuery } from './ends.dto.js';
import { NoSuchEnd } from './workbench.errors.js';

/** What a stored bike tells of one of its ends. */
interface ToldByBike {
  readonly records: BikeRecords;
  readonly unit: SpringUnit;
  readonly end: QuestionEnd;
}

/** Asks the engine about an end of a stored bike. */
@Injectable()
export class BikeQuestions {
  constructor(
    private readonly database: TeamDatabase,
    private readonly records: BikeRecordsReader,
  ) {}

  /** A question about the end alone. */
  async ask<Answer>(
    scope: TeamScope,
    path: BikeEndPath,
    query: EndsQuery,
    question: (end: QuestionEnd) => Answer | Promise<Answer>,
  ): Promise<Answer> {
    const { end } = await this.told(scope, path, query);
    return question(end);
  }

  /** A question about the end and the whole bike under its rider. */
  async askWithBike<Answer>(
    scope: TeamScope,
    path: BikeEndPath,
    query: EndsQuery,
    question: (end: QuestionEnd, bike: BikeBrakingDto) => Answer,
  ): Promise<Answer> {
    const { end, records } = await this.told(scope, path, query);
    const bike = brakingOf(records.bike, records.rider);
    return question({ ...end, assumed: [...new Set([...end.assumed, ...bike.assumed])] }, bike);
  }

  /** A question about the unit at the end. */
  async askOfUnit<Answer>(
    scope: TeamScope,
    path: BikeEndPath,
    query: EndsQuery,
    question: (unit: SpringUnit, end: QuestionEnd) => Answer | Promise<Answer>,
  ): Promise<Answer> {
    const { unit, end } = await this.told(scope, path, query);
    return question(unit, end);
  }

  /** The transaction ends before the engine is asked: a long answer holds no connection. */
  private told(scope: TeamScope, { bikeId, end }: BikeEndPath, { trackId }: EndsQuery): Promise<ToldByBike> {
    return this.database.inTeam(scope, async (transaction) => {
      const records = await this.records.read(transaction, scope, bikeId, trackId ?? null);
      const unit = unitAt(end, records);
      if (!unit) throw new NoSuchEnd(end);
      return { records, unit, end: bikeQuestionEnd(end, unit, records) };
    });
  }
}
