import type { EndBaseline, EvaluatedFill } from '../../../shared/http/reads/baselines.js';
import { NO_BREAK } from '../../../shared/format/with-unit.js';
import { sheetTexts as texts } from '../texts.js';

interface Advised {
  /** What stands on the sheet; null where neither a baseline nor a set-up is known. */
  readonly fill: EvaluatedFill | null;
  /** What a reader has to know about it. */
  readonly remark: string | null;
}

/** What a sheet says to ride: the baseline, or what comes nearest to one. */
export function advisedFill({ recommended, nearest, current }: EndBaseline): Advised {
  if (recommended !== null) return { fill: recommended, remark: null };
  if (nearest !== null) return { fill: nearest, remark: texts.nearest };
  return { fill: current, remark: texts.noRecommendation };
}

/** The same words kept on one line: a figure is not torn from its unit. */
export const unbroken = (words: string): string => words.replaceAll(' ', NO_BREAK);

/** Clicks from closed in a line; empty where none are known. */
export const clicksText = (clicks: EndBaseline['clicks']): string =>
  [
    ...(clicks?.reboundClicks == null ? [] : [unbroken(texts.rebound(clicks.reboundClicks))]),
    ...(clicks?.compressionClicks == null ? [] : [unbroken(texts.compression(clicks.compressionClicks))]),
  ].join(' · ');
