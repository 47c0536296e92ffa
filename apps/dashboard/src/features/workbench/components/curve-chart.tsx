import { Text } from '@mantine/core';
import { useMemo, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { formatChange, formatNumber } from '../../../shared/format/numbers.js';
import { pictureSize, useWidth } from '../../../shared/ui/use-width.js';
import { axisOver, type Axis } from '../model/chart-scale.js';
import type { CurvePoint, CurveQuantity } from '../model/curves.js';
import { texts } from '../texts.js';
import {
  ChartFrame,
  LEFT_PX,
  PLOT_HEIGHT_PX,
  PICTURE_HEIGHT_PX,
  RIGHT_PX,
  TICK_COUNT,
  TOP_PX,
} from './chart-frame.js';
import { ChartLines } from './chart-lines.js';
import { CurveTable } from './curve-table.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './curve-chart.module.css';

interface CurveChartProps {
  readonly title: string;
  readonly quantity: CurveQuantity;
  readonly unit: string;
  readonly decimals: number;
  readonly now: readonly CurvePoint[];
  /** Null while what is proposed cannot be. */
  readonly proposed: readonly CurvePoint[] | null;
  /** Travel at which the bumper is touched, mm. */
  readonly bumperStartMm: number;
}

/** A force a little below nothing at full extension, where the negative chamber pulls, is no reason for a lower axis. */
const SMALL_PART = 0.05;
/** Points that one press of an arrow key steps over: a fortieth of the stroke. */
const KEY_STEP = 3;

/** A quantity over travel, now and proposed on the same axes: by line style first; readable by keyboard, a table behind. */
export function CurveChart(props: CurveChartProps) {
  const { title, quantity, unit, decimals, now, proposed, bumperStartMm } = props;
  const { ref, width } = useWidth<HTMLDivElement>();
  const [told, setTold] = useState<number | null>(null);
  const plotWidth = Math.max(0, width - LEFT_PX - RIGHT_PX);
  const strokeMm = now.at(-1)?.travelMm ?? 0;
  const { from, to } = useMemo(
    () => valueAxis([...now, ...(proposed ?? [])], quantity, bumperStartMm),
    [now, proposed, quantity, bumperStartMm],
  );
  // Most presses leave the ends of the axis as they were; its lines and figures are not drawn again then.
  const y = useMemo(() => axisOver(from, to, TICK_COUNT), [from, to]);
  const key = (event: KeyboardEvent) => {
    const by = { ArrowRight: KEY_STEP, ArrowLeft: -KEY_STEP }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    setTold(Math.min(Math.max((told ?? (by > 0 ? -by : now.length - 1 - by)) + by, 0), now.length - 1));
  };
  const point = (event: PointerEvent<SVGSVGElement>) => {
    const place = event.currentTarget.getBoundingClientRect();
    const across = ((event.clientX - place.left) / place.width) * width;
    const part = (across - LEFT_PX) / plotWidth;
    setTold(Math.round(Math.min(Math.max(part, 0), 1) * (now.length - 1)));
  };
  return (
    <figure className={classes.frame} aria-label={title}>
      <figcaption>{title}</figcaption>
      <Legend />
      <div ref={ref}>
        <svg
          className={classes.picture}
          {...pictureSize(width, PICTURE_HEIGHT_PX)}
          role="group"
          tabIndex={0}
          aria-label={texts.chartName(title)}
          onKeyDown={key}
          onPointerMove={point}
          onPointerLeave={() => setTold(null)}
        >
          <g transform={`translate(${LEFT_PX} ${TOP_PX})`}>
            <ChartFrame
              y={y}
              unit={unit}
              strokeMm={strokeMm}
              bumperStartMm={bumperStartMm}
              plotWidth={plotWidth}
            />
            <ChartLines
              y={y}
              quantity={quantity}
              strokeMm={strokeMm}
              plotWidth={plotWidth}
              now={now}
              proposed={proposed}
            />
            {told !== null && (
              <line
                className={classes.cursor}
                x1={(told / (now.length - 1)) * plotWidth}
                x2={(told / (now.length - 1)) * plotWidth}
                y2={PLOT_HEIGHT_PX}
              />
            )}
          </g>
        </svg>
      </div>
      <Text size="sm" className={`${classes.told} ll-screen-only`} role="status">
        {told === null
          ? texts.chartHint
          : tellPoint(now[told], proposed?.[told], (point) => point[quantity], unit, decimals)}
      </Text>
      <CurveTable now={now} proposed={proposed} quantity={quantity} unit={unit} decimals={decimals} />
    </figure>
  );
}

/** The bumper rises out of the picture: what lies before it sets the scale. */
function valueAxis(points: readonly CurvePoint[], quantity: CurveQuantity, bumperStartMm: number): Axis {
  const values = points.filter(({ travelMm }) => travelMm <= bumperStartMm).map((point) => point[quantity]);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return axisOver(least < -SMALL_PART * most ? least : 0, most, TICK_COUNT);
}

function tellPoint(
  now: CurvePoint | undefined,
  proposed: CurvePoint | undefined,
  of: (point: CurvePoint) => number,
  unit: string,
  decimals: number,
): string {
  if (now === undefined) return '';
  const at = `${withUnit(formatNumber(now.travelMm), 'mm')}: ${texts.now.toLowerCase()} ${withUnit(formatNumber(of(now), decimals), unit)}`;
  if (proposed === undefined) return at;
  const change = formatChange(of(proposed) - of(now), decimals);
  return `${at}, ${texts.proposed.toLowerCase()} ${withUnit(formatNumber(of(proposed), decimals), unit)} (${change})`;
}

function Legend() {
  const sample = (className: string | undefined) => (
    <svg width="40" height="10" aria-hidden="true">
      <line className={className} x1="0" x2="40" y1="5" y2="5" />
    </svg>
  );
  return (
    <div className={classes.legend}>
      <span>
        {sample(classes.now)} {texts.now.toLowerCase()}
      </span>
      <span>
        {sample(classes.proposed)} {texts.proposed.toLowerCase()}
      </span>
    </div>
  );
}
