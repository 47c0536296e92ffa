import { Button, Text } from '@mantine/core';
import { memo } from 'react';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import { FIGURES, type Figure, type Remark } from '../model/answers.js';
import type { Bench, View } from '../model/bench.js';
import { changeIntervalText, changeText, figureText, intervalText } from '../model/figure-text.js';
import type { Uncertainty } from '../model/late-answers.js';
import type { Interval } from '../model/uncertainty.js';
import { FIGURE_TEXTS, REMARK_TEXTS, texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './workbench.module.css';

interface FiguresTableProps {
  readonly bench: Bench;
  readonly proposed: View | null;
  /** Null where nobody has asked, or it cannot be told; it comes a moment after the figures. */
  readonly uncertainty: Uncertainty | null;
  readonly asked: boolean;
  readonly onAsk: (asked: boolean) => void;
}

const PER_CENT = 100;

/** Every figure now and proposed, the change in brackets, and how sure it is one tap away and in print. */
export function FiguresTable({ bench, proposed, uncertainty, asked, onAsk }: FiguresTableProps) {
  const { now } = bench;
  const isKnown = (figure: Figure) =>
    now.answers.figures[figure] !== null || (proposed?.answers.figures[figure] ?? null) !== null;
  return (
    <div className={classes.part}>
      <Scroller>
        <table className={classes.figures}>
          <thead>
            <tr>
              <th scope="col">{texts.figure}</th>
              <th scope="col">{texts.now}</th>
              <th scope="col">{texts.proposed}</th>
              <th scope="col">{texts.change}</th>
            </tr>
          </thead>
          <tbody>
            {FIGURES.filter(isKnown).map((figure) => (
              <Row
                key={figure}
                figure={figure}
                wish={wishText(figure, bench)}
                now={now.answers.figures[figure]}
                proposed={proposed?.answers.figures[figure] ?? null}
                range={uncertainty?.figures[figure] ?? null}
                changeRange={uncertainty?.changes[figure] ?? null}
              />
            ))}
          </tbody>
        </table>
      </Scroller>
      <Remarks remarks={(proposed ?? now).answers.remarks} />
      <div className="ll-screen-only">
        <Button variant="default" aria-pressed={asked} onClick={() => onAsk(!asked)}>
          {texts.howSure}
        </Button>
      </div>
      {uncertainty !== null && (
        <Text size="sm" c="dimmed">
          {texts.rangesLead}
        </Text>
      )}
    </div>
  );
}

interface RowProps {
  readonly figure: Figure;
  readonly wish: string | null;
  readonly now: number | null;
  readonly proposed: number | null;
  readonly range: Interval | null;
  readonly changeRange: Interval | null;
}

/** Drawn again only where its figure moves. */
const Row = memo(function Row({ figure, wish, now, proposed, range, changeRange }: RowProps) {
  const hint = wish ?? FIGURE_TEXTS[figure].hint;
  const change = now === null || proposed === null ? null : proposed - now;
  return (
    <tr data-figure={figure}>
      <th scope="row">
        {FIGURE_TEXTS[figure].label}
        {hint !== undefined && <span className={classes.wish}>{hint}</span>}
      </th>
      <td className={classes.now}>{now === null ? texts.none : figureText(figure, now)}</td>
      <td className={classes.proposed}>
        {proposed === null ? texts.none : figureText(figure, proposed)}
        {range !== null && proposed !== null && (
          <span className={classes.range}>{intervalText(figure, range)}</span>
        )}
      </td>
      <td className={classes.now}>
        {change !== null && changeText(figure, change)}
        {change !== null && change !== 0 && changeRange !== null && (
          <span className={classes.range}>{changeIntervalText(figure, changeRange)}</span>
        )}
      </td>
    </tr>
  );
});

/** What the rider wants of a figure, where they have said so. */
function wishText(figure: Figure, { end: { wishes, unit } }: Bench): string | null {
  switch (figure) {
    case 'sagPct':
      return texts.wanted(
        withUnit(`${formatNumber(wishes.sagLowPct)}–${formatNumber(wishes.sagHighPct)}`, '%'),
      );
    case 'reserveMm':
      return texts.wanted(withUnit(formatNumber((wishes.reservePct / PER_CENT) * unit.strokeMm), 'mm'));
    case 'riskPct':
      return texts.accepted(formatShare(wishes.acceptedRiskPct / PER_CENT));
    default:
      return null;
  }
}

function Remarks({ remarks }: { remarks: readonly Remark[] }) {
  if (remarks.length === 0) return null;
  return (
    <div role="status">
      {[...new Set(remarks)].map((remark) => (
        <Text key={remark}>
          <WarningMark>{REMARK_TEXTS[remark]}</WarningMark>
        </Text>
      ))}
    </div>
  );
}
