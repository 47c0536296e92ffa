import type { VolumeAnswer } from '../api/identify-volume.js';

/** A normal quantity lies below its mean plus this many standard uncertainties 95 times in 100. */
const NORMAL_95 = 1.645;

/** Where a quantity lies 9 times in 10, from its standard uncertainty. */
export const ninetyPercent = (value: number, sd: number) => ({
  lower: Math.max(0, value - NORMAL_95 * sd),
  upper: value + NORMAL_95 * sd,
});

export type VolumeSource = VolumeAnswer['shares'][number]['of'];

const SOURCES: readonly VolumeSource[] = [
  'gaugeReadings',
  'travelReadings',
  'boreArea',
  'hoseVolume',
  'gaugeZero',
  'spacerVolume',
];

/** What limits the volume most. A refusal has no shares; it names the greatest at the end of its sentence. */
export function limitOf({ shares, message }: Pick<VolumeAnswer, 'shares' | 'message'>): VolumeSource | null {
  return shares[0]?.of ?? SOURCES.find((source) => message.endsWith(source)) ?? null;
}
