import type { KeyboardEvent } from 'react';
import { pictureSize } from '../use-width.js';
import { Mark } from './mark.js';
import {
  axisTicks,
  linesWithin,
  placeReadings,
  toPixels,
  type DemandReading,
  type DemandRow,
  type LogScale,
} from './scale.js';
import { texts } from './texts.js';
import classes from './demand-strip.module.css';

const NAME_LINE_PX = 18;
/** Below the name. */
const NAME_GAP_PX = 6;
const LANE_PX = 11;
/** Room above and below the outermost lane, px. */
const BAND_MARGIN_PX = 12;
const BOTTOM_WORD_PX = 16;
/** Mean width of a character at 12 px, and of a heavy one at 14 px, in the widest of the usual system fonts, measured in Chromium. */
const CHARACTER_PX = 7;
const NAME_CHARACTER_PX = 9;
/** A finger or a pointer finds a reading within this circle, px. */
const CATCH_RADIUS_PX = 12;

interface StripRowProps {
  readonly row: DemandRow;
  readonly scale: LogScale;
  readonly insetPx: number;
  readonly told: DemandReading | null;
  readonly onTell: (reading: DemandReading | null) => void;
}

export function StripRow({ row, scale, insetPx, told, onTell }: StripRowProps) {
  const placed = placeReadings(row.readings, scale);
  const lanes = Math.max(1, ...placed.map((dot) => Math.abs(dot.lane)));
  const bandHeight = 2 * (lanes * LANE_PX + BAND_MARGIN_PX);
  const width = scale.widthPx + 2 * insetPx;
  const name = linesWithin(row.label, width / NAME_CHARACTER_PX);
  const bandTop = name.length * NAME_LINE_PX + NAME_GAP_PX;
  const middle = bandTop + bandHeight / 2;
  const words = row.bottomsAt.map(({ label }) => linesWithin(label, scale.widthPx / CHARACTER_PX));
  const linesBefore = (place: number) => words.slice(0, place).flat().length;
  const height = bandTop + bandHeight + linesBefore(words.length) * BOTTOM_WORD_PX;
  const x = (heightM: number) => insetPx + toPixels(scale, heightM);

  const step = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (by === undefined || placed.length === 0) return;
    event.preventDefault();
    const current = placed.findIndex((dot) => dot.reading.id === told?.id);
    const next = current === -1 ? (by > 0 ? 0 : placed.length - 1) : current + by;
    onTell(placed[Math.min(Math.max(next, 0), placed.length - 1)]?.reading ?? null);
  };

  return (
    <svg
      className={classes.row}
      {...pictureSize(width, height)}
      role="group"
      tabIndex={placed.length === 0 ? undefined : 0}
      aria-label={texts.rowName(row.label, placed.length)}
      onKeyDown={step}
      onPointerLeave={() => onTell(null)}
    >
      <g className={classes.grid} aria-hidden="true">
        {axisTicks(scale).map((tick) => (
          <line key={tick} x1={x(tick)} x2={x(tick)} y1={bandTop} y2={bandTop + bandHeight} />
        ))}
      </g>
      {name.map((line, place) => (
        <text key={place} className={classes.name} x="0" y={(place + 1) * NAME_LINE_PX - 2}>
          {line}
        </text>
      ))}
      {placed.length === 0 && row.predictive === undefined && (
        <text className={classes.figure} x={insetPx} y={middle + 4}>
          {texts.noReadings}
        </text>
      )}
      {row.predictive !== undefined && (
        <g aria-hidden="true">
          <rect
            className={classes.band}
            x={x(row.predictive.lowM)}
            y={bandTop + 2}
            width={Math.max(1, x(row.predictive.highM) - x(row.predictive.lowM))}
            height={bandHeight - 4}
          />
          <line
            className={classes.middle}
            x1={x(row.predictive.medianM)}
            x2={x(row.predictive.medianM)}
            y1={bandTop + 2}
            y2={bandTop + bandHeight - 2}
          />
        </g>
      )}
      {/* The longest tick first: it ends below the words of the others, which are drawn over it. */}
      {row.bottomsAt
        .map(({ heightM, label }, place) => (
          <BottomingTick
            key={label}
            x={x(heightM)}
            words={words[place] ?? []}
            bandTop={bandTop}
            bandHeight={bandHeight}
            line={linesBefore(place)}
            width={scale.widthPx}
          />
        ))
        .toReversed()}
      {placed.map(({ reading, xPx, lane }) => (
        <g key={reading.id} onPointerEnter={() => onTell(reading)} onPointerDown={() => onTell(reading)}>
          <circle cx={insetPx + xPx} cy={middle + lane * LANE_PX} r={CATCH_RADIUS_PX} fill="transparent" />
          <Mark
            kind={reading.kind}
            voided={reading.voided}
            x={insetPx + xPx}
            y={middle + lane * LANE_PX}
            active={reading.id === told?.id}
          />
        </g>
      ))}
    </svg>
  );
}

interface BottomingTickProps {
  readonly x: number;
  readonly words: readonly string[];
  readonly bandTop: number;
  readonly bandHeight: number;
  /** Labels of several set-ups stand under one another. */
  readonly line: number;
  readonly width: number;
}

function BottomingTick({ x, words, bandTop, bandHeight, line, width }: BottomingTickProps) {
  return (
    <g>
      <line
        className={classes.bottom}
        x1={x}
        x2={x}
        y1={bandTop - 4}
        y2={bandTop + bandHeight + 4 + line * BOTTOM_WORD_PX}
      />
      {words.map((text, place) => (
        <text
          key={place}
          className={classes.bottomWord}
          x={labelStart(x, text, width)}
          y={bandTop + bandHeight + (line + place + 1) * BOTTOM_WORD_PX - 2}
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** A label stands on the side of its tick that has more room, and never leaves the strip. */
function labelStart(x: number, label: string, width: number): number {
  const labelWidth = label.length * CHARACTER_PX;
  const wanted = x > width / 2 ? x - labelWidth : x;
  return Math.max(0, Math.min(wanted, width - labelWidth));
}
