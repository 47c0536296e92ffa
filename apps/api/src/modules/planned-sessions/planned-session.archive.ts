import { agrees, archived } from '../../platform/archive/archived.js';
import { message } from '../../platform/archive/checks.js';
import { PlannedSessionEntity } from './planned-session.entity.js';
import { PlannedSessionDto } from './planned-sessions.dto.js';
import { answer } from './planned-sessions.service.js';

export const PLANNED_SESSION_ARCHIVE = archived(PlannedSessionEntity, {
  lists: { riderIds: 'rider' },
  row: message(PlannedSessionDto, answer),
  rules: [agrees('testPlanId', 'trackId')],
});
