import { InvalidField } from '../../platform/errors/refusal.js';

export class SagBandReversed extends InvalidField {
  constructor(end: string, low: number, high: number) {
    super('rider.sag-band-reversed', `${end}.sagHighPct`, high, `above sagLowPct, which is ${low} %`);
  }
}
