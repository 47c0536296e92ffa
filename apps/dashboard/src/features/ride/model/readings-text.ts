import { formatNumber } from '../../../shared/format/numbers.js';
import type { RunInput } from '../queue/queued-run.js';
import { myBikeTexts } from '../my-bike-texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

type Ring = RunInput['fork'];

function ringText(end: string, ring: Ring): string[] {
  if (ring == null) return [];
  const { travelUsedMm, travelLeftMm, bottomOuts } = ring;
  const figures = [
    ...(travelUsedMm == null ? [] : [`${withUnit(formatNumber(travelUsedMm), 'mm')} used`]),
    ...(travelLeftMm == null ? [] : [`${withUnit(formatNumber(travelLeftMm), 'mm')} left`]),
    ...(bottomOuts ? ['bottomed out'] : []),
  ];
  return [`${end} ${figures.join(', ')}`];
}

/** What the rider noted about a run that is not stored yet: "fork 141 mm used · shock 50 mm used". */
export function readingsText({ fork, shock, spoilt }: RunInput): string {
  return [
    ...ringText(myBikeTexts.fork, fork),
    ...ringText(myBikeTexts.shock, shock),
    ...(spoilt ? [`${myBikeTexts.spoilt}: ${spoilt.reason}`] : []),
  ].join(' · ');
}
