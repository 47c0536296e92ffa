import { formatChange, formatNumber, formatShare } from '../../../shared/format/numbers.js';
import type { EvaluatedFill } from '../../../shared/http/reads/baselines.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import { shortFillText } from '../model/fill-text.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './baselines.module.css';

interface FillTableProps {
  readonly name: string;
  readonly now: EvaluatedFill | null;
  readonly wanted: EvaluatedFill | null;
  readonly wantedName: string;
  /** Whether the risk wanted is beyond the accepted one, which rounding must not hide. */
  readonly isTooRisky: boolean;
}

const PER_CENT = 100;
const risk = (fill: EvaluatedFill) => formatShare(fill.riskPct / PER_CENT);
const sag = (fill: EvaluatedFill) => withUnit(formatNumber(fill.sagPct, 1), '%');
const left = (fill: EvaluatedFill) => withUnit(formatNumber(fill.reserve95Mm), 'mm');

const braking = ({ brakingTravelMm }: EvaluatedFill) =>
  brakingTravelMm === null ? '' : withUnit(formatNumber(brakingTravelMm), 'mm');

/** Now beside the baseline; the change from now in brackets. */
export function FillTable({ name, now, wanted, wantedName, isTooRisky }: FillTableProps) {
  const change = (of: (fill: EvaluatedFill) => number, decimals = 0) =>
    now === null || wanted === null ? '' : ` (${formatChange(of(wanted) - of(now), decimals)})`;
  return (
    <Scroller>
      <table className={classes.figures}>
        <thead>
          <tr>
            <th scope="col" style={{ textAlign: 'start', paddingInlineStart: 0 }}>
              {name}
            </th>
            <th scope="col">{texts.now}</th>
            {wanted !== null && <th scope="col">{wantedName}</th>}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{texts.fill}</th>
            <td>{now === null ? texts.notSetUp : shortFillText(now)}</td>
            {wanted !== null && <td>{shortFillText(wanted)}</td>}
          </tr>
          <tr>
            <th scope="row">{texts.sag}</th>
            <td>{now !== null && sag(now)}</td>
            {wanted !== null && (
              <td>
                {sag(wanted)}
                {change((fill) => fill.sagPct, 1)}
              </td>
            )}
          </tr>
          <tr>
            <th scope="row">{texts.high}</th>
            <td>{now !== null && left(now)}</td>
            {wanted !== null && (
              <td>
                {left(wanted)}
                {change((fill) => fill.reserve95Mm)}
              </td>
            )}
          </tr>
          {(now ?? wanted)?.brakingTravelMm != null && (
            <tr>
              <th scope="row">{texts.braking}</th>
              <td>{now !== null && braking(now)}</td>
              {wanted !== null && (
                <td>
                  {braking(wanted)}
                  {change((fill) => fill.brakingTravelMm ?? 0)}
                </td>
              )}
            </tr>
          )}
          <tr>
            <th scope="row">{texts.risk}</th>
            <td>{now !== null && risk(now)}</td>
            {wanted !== null && (
              <td>{isTooRisky ? withUnit(formatNumber(wanted.riskPct, 1), '%') : risk(wanted)}</td>
            )}
          </tr>
        </tbody>
      </table>
    </Scroller>
  );
}
