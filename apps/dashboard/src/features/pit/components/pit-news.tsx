import { formatClock } from '../../../shared/format/time.js';
import type { LineState } from '../../../shared/live/change-line.js';
import { texts } from '../texts.js';
import classes from './pit.module.css';

interface PitNewsProps {
  readonly line: LineState;
  /** What was changed last, and when that was heard. */
  readonly news: { readonly words: string; readonly at: number } | undefined;
}

/** Whether the page is live, and what was heard last: said politely, when whoever listens has a moment. */
export function PitNews({ line, news }: PitNewsProps) {
  return (
    <div className={`${classes.line} ll-screen-only`}>
      <span>{line === 'live' ? texts.live : texts.lost}</span>
      <span role="status">
        {news !== undefined && texts.heard(formatClock(news.at, news.at), news.words)}
      </span>
    </div>
  );
}
