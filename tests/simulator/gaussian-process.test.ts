import { describe, expect, it } from 'vitest';
import reference from '../reference/gaussian_process.json' with { type: 'json' };
import { expectedImprovement } from './advice/expected-improvement.js';
import { gaussianProcess } from './advice/gaussian-process.js';

const { inputs, outputs } = reference;
/** Decimals that agree: both sides solve a well-conditioned 5 × 5 system in doubles; quadrature is good to 1e-12. */
const DECIMALS = 10;

describe('the Gaussian process that the tool is compared with', () => {
  const process = gaussianProcess(inputs.points, inputs.values, {
    signalSd: inputs.signal_sd,
    length: inputs.length,
    noiseSd: inputs.noise_sd,
  });
  const seen = inputs.at.map((point) => process.at(point));

  it('has the posterior that an explicit inverse gives', () => {
    for (const [i, { mean, sd }] of seen.entries()) {
      expect(mean).toBeCloseTo(outputs.mean[i] as number, DECIMALS);
      expect(sd).toBeCloseTo(outputs.sd[i] as number, DECIMALS);
    }
  });

  it('has the likelihood that the multivariate normal density gives', () => {
    expect(process.logLikelihood).toBeCloseTo(outputs.log_likelihood, DECIMALS);
  });

  it('expects the improvement that numerical integration gives', () => {
    for (const [i, at] of seen.entries()) {
      expect(expectedImprovement(at, inputs.best)).toBeCloseTo(
        outputs.expected_improvement[i] as number,
        DECIMALS,
      );
    }
  });
});
