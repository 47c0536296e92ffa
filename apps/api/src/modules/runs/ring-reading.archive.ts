import { archived } from '../../platform/archive/archived.js';
import { number, word } from '../../platform/archive/checks.js';
import { ENDS } from '../suspension/end-inputs.js';
import { RingReadingEntity } from './ring-reading.entity.js';

const MAX_TRAVEL = 0.3;
const [LEAST_SD, MOST_SD] = [1e-4, 0.02];

/**
 * What was read travels; the hit height behind it is found again where it arrives, by the engine there and from the
 * figures that arrived with it: an archive cannot bring a height that its own figures do not give.
 */
export const RING_READING_ARCHIVE = archived(RingReadingEntity, {
  derived: {
    hitKind: null,
    hitHeight: null,
    hitLower: null,
    hitUpper: null,
    logHeight: null,
    logSd: null,
    basis: '',
    inputs: {},
  },
  columns: { end: word(ENDS), travelUsed: number(0, MAX_TRAVEL), readingSd: number(LEAST_SD, MOST_SD) },
});
