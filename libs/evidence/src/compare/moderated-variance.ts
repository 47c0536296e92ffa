import { requireNotNegative } from '../errors.js';
import { digamma, inverseTrigamma, trigamma } from '../numerics/distributions.js';

/** Residual variance of one past session and its degrees of freedom. */
export interface SessionVariance {
  /** (log time)². */
  variance: number;
  df: number;
}

/** Prior of the variance between runs, fitted to past sessions. */
export interface VariancePrior {
  /** Degrees of freedom that the history is worth; 0: no moderation; Infinity: all sessions alike. */
  df: number;
  /** (log time)². */
  variance: number;
  /** Sessions used, and those dropped because their variance was 0. */
  sessions: number;
  dropped: number;
}

/**
 * Scaled inverse χ² prior of session variances, in the square of their unit.
 *
 * z = log s², e = z − ψ(d/2) + log(d/2); ψ′(d₀/2) = var(e) − mean ψ′(d/2); s₀² = exp(mean e + ψ(d₀/2) − log(d₀/2))
 * (smyth2004, section 6.2); where the right side is not above 0, d₀ = ∞ and s₀² = mean s². Sessions without degrees of
 * freedom or of variance 0 (a timer's resolution) are left out. One session gives d₀ = 0.
 */
export function fitVariancePrior(history: readonly SessionVariance[]): VariancePrior {
  for (const [i, session] of history.entries()) {
    requireNotNegative(`history[${i}].variance`, session.variance, '(log time)²');
    requireNotNegative(`history[${i}].df`, session.df, 'degrees of freedom');
  }
  const informed = history.filter((session) => session.df > 0);
  const used = informed.filter((session) => session.variance > 0);
  const dropped = informed.length - used.length;
  if (used.length < 2) return { df: 0, variance: used[0]?.variance ?? 0, sessions: used.length, dropped };
  const e = used.map(({ variance, df }) => Math.log(variance) - digamma(df / 2) + Math.log(df / 2));
  const centre = mean(e);
  const spread = e.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (e.length - 1);
  const excess = spread - mean(used.map(({ df }) => trigamma(df / 2)));
  if (excess <= 0) {
    return {
      df: Number.POSITIVE_INFINITY,
      variance: mean(used.map(({ variance }) => variance)),
      sessions: used.length,
      dropped,
    };
  }
  const half = inverseTrigamma(excess);
  return {
    df: 2 * half,
    variance: Math.exp(centre + digamma(half) - Math.log(half)),
    sessions: used.length,
    dropped,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Fewer sessions or degrees of freedom give a d₀ that is mostly chance, often ∞ (judgement; docs/evidence/comparison.md). */
const FEWEST_SESSIONS = 8;
const FEWEST_DF = 24;

/** A variance with its degrees of freedom, and where it comes from. */
export interface ModeratedVariance extends SessionVariance {
  source: 'this session' | 'moderated by history' | 'history alone';
}

/**
 * Variance of a session moderated by the team's history, in (log time)²: (d₀ s₀² + d s²)/(d₀ + d) on d₀ + d degrees of
 * freedom, at most as many as all sessions have together (smyth2004). A session of variance 0 (a timer's resolution)
 * says nothing. Short histories (fewer than 8 sessions or 24 degrees of freedom) do not moderate. Null when neither says anything.
 */
export function moderateVariance(
  session: SessionVariance,
  history: readonly SessionVariance[],
): ModeratedVariance | null {
  const prior = fitVariancePrior(history);
  const historyDf = history.reduce((sum, { variance, df }) => sum + (variance > 0 ? df : 0), 0);
  const enough = prior.sessions >= FEWEST_SESSIONS && historyDf >= FEWEST_DF && prior.df > 0;
  const informed = session.df > 0 && session.variance > 0;
  if (!enough) return informed ? { ...session, source: 'this session' } : null;
  const df = Math.min(prior.df, historyDf) + (informed ? session.df : 0);
  if (!informed) return { variance: prior.variance, df, source: 'history alone' };
  return { variance: squeeze(session, prior), df, source: 'moderated by history' };
}

/** Why a history does not moderate the scatter; null: it does. */
export function historyShortfall(history: readonly SessionVariance[]): string | null {
  const alone = 'the scatter is judged from these runs alone.';
  if (history.length === 0) return `No past sessions: ${alone}`;
  const used = history.filter(({ variance, df }) => df > 0 && variance > 0);
  if (used.length < FEWEST_SESSIONS)
    return `Past sessions: ${used.length} of the ${FEWEST_SESSIONS} that are needed; until then ${alone}`;
  const df = used.reduce((sum, session) => sum + session.df, 0);
  return df < FEWEST_DF
    ? `Past sessions: ${df} of the ${FEWEST_DF} degrees of freedom that are needed; until then ${alone}`
    : null;
}

/** (d₀ s₀² + d s²)/(d₀ + d). */
export function squeeze(session: SessionVariance, prior: { df: number; variance: number }): number {
  if (prior.df === Number.POSITIVE_INFINITY) return prior.variance;
  return (prior.df * prior.variance + session.df * session.variance) / (prior.df + session.df);
}
