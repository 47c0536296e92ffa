import { useId, useMemo } from 'react';
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
export function ChartLines({ now, proposed, ...place }: ChartLinesProps) {
  const clipId = useId();
  return (
    <g clipPath={`url(#${clipId})`} aria-hidden="true">
      <clipPath id={clipId}>
        <rect width={place.plotWidth} height={PLOT_HEIGHT_PX} />
      </clipPath>
      <Line className={classes.now} points={now} {...place} />
      {proposed !== null && <Line className={classes.proposed} points={proposed} {...place} />}
    </g>
  );
}

interface LineProps extends Omit<ChartLinesProps, 'now' | 'proposed'> {
  readonly className: string | undefined;
  readonly points: readonly CurvePoint[];
}

function Line({ className, points, quantity, y, strokeMm, plotWidth }: LineProps) {
  const { from, to } = y;
  const path = useMemo(
    () => linePath(points, quantity, { from, to }, strokeMm, plotWidth),
    [points, quantity, from, to, strokeMm, plotWidth],
  );
  return <path className={className} d={path} />;
}

function linePath(
  points: readonly CurvePoint[],
  quantity: CurveQuantity,
  y: Pick<Axis, 'from' | 'to'>,
  strokeMm: number,
  plotWidth: number,
): string {
  const places = points.map((point) => {
    const across = (point.travelMm / strokeMm) * plotWidth;
    const down = PLOT_HEIGHT_PX - alongAxis(y, point[quantity], PLOT_HEIGHT_PX);
    return `${across.toFixed(1)} ${down.toFixed(1)}`;
  });
  return `M${places.join('L')}`;
}
