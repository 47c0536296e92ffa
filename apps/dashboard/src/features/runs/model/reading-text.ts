import { formatHeight, formatNumber } from '../../../shared/format/numbers.js';
import type { Run } from '../../../shared/http/reads/runs.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

type Hit = NonNullable<NonNullable<Run['fork']>['hit']>;

const KIND: Record<Hit['kind'], string> = {
  exact: '',
  'at-least': `${texts.atLeast} `,
  'at-most': `${texts.atMost} `,
};

/** The hit height behind a reading, in words: "hit at least 0.94 m". */
function hitText(hit: Hit | null): string {
  return hit === null ? '' : ` · ${texts.hit} ${KIND[hit.kind]}${withUnit(formatHeight(hit.heightM), 'm')}`;
}

/** What the ring showed: "152 mm · hit 0.47 m". */
export function readingText(reading: Run['fork']): string {
  return reading === null
    ? texts.notRead
    : `${withUnit(formatNumber(reading.travelUsedMm), 'mm')}${hitText(reading.hit)}`;
}
