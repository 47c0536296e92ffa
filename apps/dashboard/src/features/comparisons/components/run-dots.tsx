import { Text } from '@mantine/core';
import { useState, type KeyboardEvent } from 'react';
import { formatRunTime } from '../../../shared/format/time.js';
import { pictureSize, useWidth } from '../../../shared/ui/use-width.js';
import type { RunPoint } from '../api/comparison.js';
import { alongAxis, axisBetween } from '../model/axis.js';
import { fittedLine, keyOf, trendLine } from '../model/run-groups.js';
import { texts } from '../texts.js';
import { DotsLegend, type Series } from './dots-legend.js';
import { RunTable } from './run-table.js';
import { dashOf, SeriesMark, seriesClass } from './series-mark.js';
import classes from './comparisons.module.css';

const HEIGHT_PX = 260;
const LEFT_PX = 56;
const RIGHT_PX = 16;
/** Room for the letter of a run at the top. */
const TOP_PX = 22;
const BOTTOM_PX = 40;
const PLOT_PX = HEIGHT_PX - TOP_PX - BOTTOM_PX;
const TICKS = 5;
const CATCH_PX = 14;

interface RunDotsProps {
  readonly title: string;
  readonly points: readonly RunPoint[];
  /** The current one first. */
  readonly series: readonly Series[];
}

/** The times of one rider in one session in their order, with the fitted trend of each arm. */
export function RunDots({ title, points, series }: RunDotsProps) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const [told, setTold] = useState<number | null>(null);
  const plot = Math.max(0, width - LEFT_PX - RIGHT_PX);
  const times = points.flatMap(({ timeS, trendS, fittedS }) =>
    [timeS, trendS, fittedS].filter((time) => time !== null),
  );
  const y = times.length === 0 ? undefined : axisBetween(Math.min(...times), Math.max(...times), TICKS);
  const places = points.map(({ position }) => position);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const x = (place: number) => LEFT_PX + ((place - first + 0.5) / (last - first + 1)) * plot;
  // A run without a time stands at the foot of the picture.
  const down = (time: number | null) =>
    TOP_PX + PLOT_PX - (time === null || y === undefined ? 0 : alongAxis(y, time, PLOT_PX));
  const indexOf = (point: RunPoint) => series.findIndex(({ key }) => key === keyOf(point));
  const path = (line: readonly { place: number; timeS: number }[]) =>
    line.length < 2 ? '' : `M${line.map(({ place, timeS }) => `${x(place)} ${down(timeS)}`).join('L')}`;
  const step = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    setTold(Math.min(Math.max((told ?? (by > 0 ? -1 : points.length)) + by, 0), points.length - 1));
  };
  const toldPoint = told === null ? undefined : points[told];
  return (
    <figure className={classes.frame} aria-label={title}>
      <figcaption>{title}</figcaption>
      <DotsLegend series={series} />
      <div ref={ref}>
        <svg
          {...pictureSize(width, HEIGHT_PX)}
          role="group"
          tabIndex={0}
          aria-label={texts.dotsName(title, points.length)}
          onKeyDown={step}
          onPointerLeave={() => setTold(null)}
        >
          {y?.ticks.map((tick) => (
            <g key={tick} aria-hidden="true">
              <line
                className={classes.grid}
                x1={LEFT_PX}
                x2={width - RIGHT_PX}
                y1={down(tick)}
                y2={down(tick)}
              />
              <text className={classes.figure} x={LEFT_PX - 6} y={down(tick) + 4} textAnchor="end">
                {formatRunTime(tick)}
              </text>
            </g>
          ))}
          <text className={classes.figure} x={width - RIGHT_PX} y={HEIGHT_PX - 4} textAnchor="end">
            {texts.axisPlace}
          </text>
          {series.map(({ key }, i) => (
            <path
              key={key}
              aria-hidden="true"
              className={`${classes.line} ${seriesClass(i)}`}
              strokeDasharray={dashOf(i)}
              d={path(i === 0 ? trendLine(points) : fittedLine(points, key))}
            />
          ))}
          {points.map((point, i) => {
            const index = Math.max(0, indexOf(point));
            const [across, at] = [x(point.position), down(point.timeS)];
            return (
              <g key={point.runId} onPointerEnter={() => setTold(i)} onPointerDown={() => setTold(i)}>
                <circle cx={across} cy={at} r={CATCH_PX} fill="transparent" />
                <SeriesMark
                  index={index}
                  x={across}
                  y={at}
                  hollow={point.voided || point.timeS === null}
                  active={i === told}
                />
                <text className={`${classes.letter} ${seriesClass(index)}`} x={across + 9} y={at - 5}>
                  {series[index]?.short}
                </text>
                <text className={classes.figure} x={across} y={TOP_PX + PLOT_PX + 16} textAnchor="middle">
                  {point.position}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
      <Text size="sm" className={`${classes.told} ll-screen-only`} role="status">
        {toldPoint === undefined ? texts.hint : tellRun(toldPoint, series[indexOf(toldPoint)]?.label ?? '')}
      </Text>
      <RunTable points={points} labelOf={(point) => series[indexOf(point)]?.label ?? ''} />
    </figure>
  );
}

function tellRun({ position, timeS, fittedS, voided }: RunPoint, label: string): string {
  const time = timeS === null ? texts.notTimed : formatRunTime(timeS);
  const fitted = fittedS === null ? '' : `, ${texts.fitted.toLowerCase()} ${formatRunTime(fittedS)}`;
  return `${texts.run} ${position}, ${label}: ${time}${fitted}${voided ? `, ${texts.void}` : ''}`;
}
