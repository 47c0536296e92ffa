import { Text } from '@mantine/core';
import { useState } from 'react';
import { pictureSize, useWidth } from '../use-width.js';
import { DemandTable } from './demand-table.js';
import { Mark } from './mark.js';
import { StripRow } from './strip-row.js';
import { axisTicks, scaleFor, toPixels, type DemandReading, type DemandRow } from './scale.js';
import { texts } from './texts.js';
import classes from './demand-strip.module.css';

const AXIS_PX = 40;
/** Keeps arrows and labels at the ends of the scale inside the picture. */
const INSET_PX = 12;

interface DemandStripProps {
  readonly title: string;
  readonly rows: readonly DemandRow[];
}

/** How hard a track hits: every reading as a hit height, a row for each rider, on one log axis. */
export function DemandStrip({ title, rows }: DemandStripProps) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const [told, setTold] = useState<DemandReading | null>(null);
  const scale = scaleFor(rows, Math.max(0, width - 2 * INSET_PX));
  return (
    <figure className={classes.frame} aria-label={title}>
      <Legend />
      <div ref={ref}>
        {rows.map((row) => (
          <StripRow key={row.key} row={row} scale={scale} insetPx={INSET_PX} told={told} onTell={setTold} />
        ))}
        <svg {...pictureSize(width, AXIS_PX)} aria-hidden="true">
          {axisTicks(scale).map((height) => (
            <text
              key={height}
              className={classes.figure}
              x={INSET_PX + toPixels(scale, height)}
              y="14"
              textAnchor="middle"
            >
              {height}
            </text>
          ))}
          <text className={classes.figure} x={width} y="34" textAnchor="end">
            {texts.axis}
          </text>
        </svg>
      </div>
      <Text size="sm" className={classes.told} role="status">
        {told?.label ?? texts.hint}
      </Text>
      <DemandTable rows={rows} />
    </figure>
  );
}

function Legend() {
  const sign = (kind: DemandReading['kind'], voided = false) => (
    <svg width="20" height="14" aria-hidden="true">
      <Mark kind={kind} voided={voided} x={kind === 'atMost' ? 15 : kind === 'atLeast' ? 4 : 10} y={7} />
    </svg>
  );
  return (
    <div className={classes.legend}>
      <span>
        {sign('exact')} {texts.exact}
      </span>
      <span>
        {sign('atLeast')} {texts.atLeast}
      </span>
      <span>
        {sign('atMost')} {texts.atMost}
      </span>
      <span>
        {sign('exact', true)} {texts.voided}
      </span>
      <span>
        <svg width="20" height="14" aria-hidden="true">
          <rect className={classes.band} x="1" y="2" width="18" height="10" />
          <line className={classes.middle} x1="10" x2="10" y1="2" y2="12" />
        </svg>
        {texts.band}
      </span>
      <span>
        <svg width="10" height="14" aria-hidden="true">
          <line className={classes.bottom} x1="5" x2="5" y1="0" y2="14" />
        </svg>
        {texts.bottoms}
      </span>
    </div>
  );
}
