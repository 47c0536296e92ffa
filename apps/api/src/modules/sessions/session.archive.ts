import { archived } from '../../platform/archive/archived.js';
import { message } from '../../platform/archive/checks.js';
import { SessionEntity } from './session.entity.js';
import { SessionDto } from './sessions.dto.js';
import { answer } from './sessions.service.js';

export const SESSION_ARCHIVE = archived(SessionEntity, { row: message(SessionDto, answer) });
