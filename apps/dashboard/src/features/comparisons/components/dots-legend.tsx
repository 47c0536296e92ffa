import { texts } from '../texts.js';
import { dashOf, SeriesMark, seriesClass } from './series-mark.js';
import classes from './comparisons.module.css';

/** An arm in a picture. */
export interface Series {
  readonly key: string;
  readonly label: string;
  /** Beside its dots. */
  readonly short: string;
}

/** Mark and line of each arm, in words; the trend is that of the first. */
export function DotsLegend({ series }: { series: readonly Series[] }) {
  return (
    <div className={classes.legend}>
      {series.map(({ key, label }, i) => (
        <span key={key}>
          <svg width="44" height="14" aria-hidden="true">
            <line
              className={`${classes.line} ${seriesClass(i)}`}
              strokeDasharray={dashOf(i)}
              x2="44"
              y1="7"
              y2="7"
            />
            <SeriesMark index={i} x={22} y={7} />
          </svg>
          {i === 0 ? `${label}, ${texts.trendLine}` : label}
        </span>
      ))}
      <span>
        <svg width="14" height="14" aria-hidden="true">
          <SeriesMark index={0} x={7} y={7} hollow />
        </svg>
        {texts.hollow}
      </span>
    </div>
  );
}
