import { useId } from 'react';
import { pictureSize, useWidth } from '../use-width.js';
import {
  axisTicks,
  describeStroke,
  layoutLabels,
  strokeFigure,
  toPixels,
  type StrokeMarks,
} from './layout.js';
import classes from './stroke-bar.module.css';

const ROW_PX = 20;
const BAR_PX = 22;
const LEADER_PX = 6;
/** From the foot of a line of text to the line below it, px. */
const WORD_LIFT_PX = 4;
const AXIS_PX = 20;
const TICK_PX = 5;
const BRACKET_CAP_PX = 5;
/** Half the outline's width, so that the ends of the bar are drawn whole. */
const EDGE_PX = 1;

interface StrokeBarProps extends StrokeMarks {
  /** What the bar shows, e.g. "Fork, now". */
  readonly title: string;
  /** Hides the title where a heading right above says it already. */
  readonly titleHidden?: boolean;
}

/** One stroke from full extension to full travel, to scale, with what this set-up uses of it. */
export function StrokeBar({ title, titleHidden = false, ...marks }: StrokeBarProps) {
  const { ref, width } = useWidth<HTMLElement>();
  return (
    <figure className={classes.frame} ref={ref} aria-label={title}>
      {!titleHidden && <figcaption className={classes.caption}>{title}</figcaption>}
      <Picture marks={marks} widthPx={width} />
    </figure>
  );
}

function Picture({ marks, widthPx }: { marks: StrokeMarks; widthPx: number }) {
  const hatchId = useId();
  const labels = layoutLabels(marks, widthPx);
  const rows = Math.max(1, ...labels.map((label) => label.row + 1));
  const barTop = rows * ROW_PX + LEADER_PX;
  const barBottom = barTop + BAR_PX;
  const middle = (barTop + barBottom) / 2;
  const at = (mm: number) => toPixels(mm, marks.strokeMm, widthPx);

  return (
    <svg
      className={classes.picture}
      {...pictureSize(widthPx, barBottom + AXIS_PX)}
      role="img"
      aria-label={describeStroke(marks)}
    >
      <pattern id={hatchId} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className={classes.hatch} y2="6" />
      </pattern>
      <rect
        className={classes.outline}
        x={EDGE_PX}
        y={barTop}
        width={Math.max(0, widthPx - 2 * EDGE_PX)}
        height={BAR_PX}
      />
      {marks.bumperStartMm !== undefined && (
        <rect
          fill={`url(#${hatchId})`}
          x={at(marks.bumperStartMm)}
          y={barTop}
          width={Math.max(0, widthPx - at(marks.bumperStartMm) - EDGE_PX)}
          height={BAR_PX}
        />
      )}
      {marks.medianHitMm !== undefined && (
        <rect
          className={classes.median}
          x={EDGE_PX}
          y={barTop + 1}
          width={at(marks.medianHitMm)}
          height={BAR_PX - 2}
        />
      )}
      {marks.sagMm !== undefined && (
        <rect className={classes.sag} x={EDGE_PX} y={barTop} width={at(marks.sagMm)} height={BAR_PX} />
      )}
      {marks.highHit?.lowMm !== undefined && marks.highHit.highMm !== undefined && (
        <path
          className={classes.bracket}
          d={bracketPath(at(marks.highHit.lowMm), at(marks.highHit.highMm), middle)}
        />
      )}
      {/* Lines first: a word then covers the line that passes behind it. */}
      {labels.map((label) => (
        <g key={label.key}>
          <line
            className={classes.leader}
            x1={label.markPx}
            x2={label.markPx}
            y1={barTop - label.row * ROW_PX - LEADER_PX}
            y2={barTop}
          />
          <line
            className={label.key === 'high' ? classes.high : classes.mark}
            x1={label.markPx}
            x2={label.markPx}
            y1={barTop}
            y2={barBottom}
          />
        </g>
      ))}
      {labels.map((label) => (
        <text
          key={label.key}
          className={classes.word}
          x={label.textPx}
          y={barTop - label.row * ROW_PX - LEADER_PX - WORD_LIFT_PX}
        >
          {label.text}
        </text>
      ))}
      {axisTicks(marks.strokeMm, widthPx).map((mm, index, all) => (
        <g key={mm}>
          <line className={classes.leader} x1={at(mm)} x2={at(mm)} y1={barBottom} y2={barBottom + TICK_PX} />
          <text
            className={classes.figure}
            x={at(mm)}
            y={barBottom + AXIS_PX - 3}
            textAnchor={index === 0 ? 'start' : index === all.length - 1 ? 'end' : 'middle'}
          >
            {index === all.length - 1 ? strokeFigure(mm) : mm}
          </text>
        </g>
      ))}
    </svg>
  );
}

function bracketPath(from: number, to: number, middle: number): string {
  const cap = `M${from} ${middle - BRACKET_CAP_PX}V${middle + BRACKET_CAP_PX}`;
  const end = `M${to} ${middle - BRACKET_CAP_PX}V${middle + BRACKET_CAP_PX}`;
  return `${cap}M${from} ${middle}H${to}${end}`;
}
