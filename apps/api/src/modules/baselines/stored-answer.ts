import type { BaselineAnswer } from './compute-baseline.js';
import type { EndBaselineDto } from './end-baseline.dto.js';
import type { AlternativeDto, EvaluatedFillDto } from './fill.dto.js';

/** Fields that answers have carried since composition 2. */
type Added<Whole, Names extends keyof Whole> = Omit<Whole, Names> & Partial<Pick<Whole, Names>>;

type StoredFill = Added<EvaluatedFillDto, 'brakingTravelMm' | 'earlyForceN'>;
type StoredEnd = Omit<
  Added<EndBaselineDto, 'wanted' | 'clicks' | 'time' | 'sharpen'>,
  'current' | 'recommended' | 'nearest' | 'steps' | 'alternatives'
> & {
  current: StoredFill | null;
  recommended: StoredFill | null;
  nearest: StoredFill | null;
  steps: StoredFill[];
  alternatives: (Omit<AlternativeDto, 'fill' | 'cost'> & {
    fill: StoredFill;
    cost?: AlternativeDto['cost'];
  })[];
};

/** An answer as it was stored, by this composition or an earlier one. */
export interface StoredAnswer {
  venue?: BaselineAnswer['venue'];
  fork: StoredEnd;
  shock: StoredEnd | null;
}

/** The stored answer with what an earlier composition did not say left empty: nothing is computed after the fact. */
export const answerAsStored = ({ venue, fork, shock }: StoredAnswer): BaselineAnswer => ({
  venue: venue ?? null,
  fork: wholeEnd(fork),
  shock: shock && wholeEnd(shock),
});

const wholeEnd = (end: StoredEnd): EndBaselineDto => ({
  wanted: null,
  clicks: null,
  time: [],
  sharpen: null,
  ...end,
  current: end.current && wholeFill(end.current),
  recommended: end.recommended && wholeFill(end.recommended),
  nearest: end.nearest && wholeFill(end.nearest),
  steps: end.steps.map(wholeFill),
  alternatives: end.alternatives.map((alternative) => ({
    cost: null,
    ...alternative,
    fill: wholeFill(alternative.fill),
  })),
});

const wholeFill = (fill: StoredFill): EvaluatedFillDto => ({
  brakingTravelMm: null,
  earlyForceN: null,
  ...fill,
});
