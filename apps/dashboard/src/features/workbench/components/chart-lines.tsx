import { useId } from 'react';
import { alongAxis, type Axis } from '../model/chart-scale.js';
import type { CurvePoint, CurveQuantity } from '../model/curves.js';
import { PLOT_HEIGHT_PX } from './chart-frame.js';
import classes from './curve-chart.module.css';

interface ChartLinesProps {
  readonly quantity: CurveQuantity;
  readonly now: readonly CurvePoint[];
  readonly proposed: readonly CurvePoint[] | null;
  readonly y: Axis;
  readonly strokeMm: number;
  readonly plotWidth: number;
}

/** Now as a whole line, proposed dashed; what rises above the axis is cut off there. */
export function ChartLines({ y, quantity, strokeMm, plotWidth, now, proposed }: ChartLinesProps) {
  const clipId = useId();
  const path = (points: readonly CurvePoint[]) =>
    `M${points
      .map((point) => {
        const across = (point.travelMm / strokeMm) * plotWidth;
        const down = PLOT_HEIGHT_PX - alongAxis(y, point[quantity], PLOT_HEIGHT_PX);
        return `${across.toFixed(1)} ${down.toFixed(1)}`;
      })
      .join('L')}`;
  return (
    <g clipPath={`url(#${clipId})`} aria-hidden="true">
      <clipPath id={clipId}>
        <rect width={plotWidth} height={PLOT_HEIGHT_PX} />
      </clipPath>
      <path className={classes.now} d={path(now)} />
      {proposed !== null && <path className={classes.proposed} d={path(proposed)} />}
    </g>
  );
}
