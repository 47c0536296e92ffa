import { fillText } from '../../../shared/format/fill.js';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import { strokeMarks } from '../../../shared/format/stroke-marks.js';
import type { EndBaseline, EvaluatedFill } from '../../../shared/http/reads/baselines.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import { advisedFill, clicksText, unbroken } from '../model/sheet.js';
import { sheetTexts as texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './sheets.module.css';

const PER_CENT = 100;

/** One end of a bike on paper: what to set, large, what it uses of its stroke, and how far that is known. */
export function EndSheet({ name, end }: { name: string; end: EndBaseline }) {
  const { fill, remark } = advisedFill(end);
  return (
    <div role="group" className={classes.end} aria-label={name}>
      <h3>{name}</h3>
      {fill === null ? (
        <p className={classes.figure}>{texts.notSet}</p>
      ) : (
        <Advised name={name} end={end} fill={fill} />
      )}
      {remark !== null && <p>⚠ {remark}</p>}
      <p>{texts.evidenceOf(end.evidence.level, end.evidence.message)}</p>
      {end.alternatives.length > 0 && (
        <p>
          {texts.alternatives}:{' '}
          {end.alternatives.map(({ kind, fill: other }) => `${kind} ${unbroken(fillText(other))}`).join('; ')}
          .
        </p>
      )}
      {end.assumed.length > 0 && <p>{texts.assumed(formatNumber(end.assumed.length))}</p>}
    </div>
  );
}

function Advised({ name, end, fill }: { name: string; end: EndBaseline; fill: EvaluatedFill }) {
  return (
    <>
      <p className={classes.figure}>{fillText(fill)}</p>
      <p>
        {[
          clicksText(end.clicks),
          end.current === null || end.current === fill ? '' : texts.now(unbroken(fillText(end.current))),
        ]
          .filter((part) => part !== '')
          .join(' · ')}
      </p>
      <StrokeBar title={texts.stroke(name)} titleHidden {...strokeMarks(end, fill)} />
      <p>
        {texts.predicted(
          withUnit(formatNumber(fill.sagPct, 1), '%'),
          withUnit(formatNumber(fill.medianTravelMm), 'mm'),
          withUnit(formatNumber(fill.travel95Mm), 'mm'),
        )}{' '}
        {texts.riskOf(unbroken(formatShare(fill.riskPct / PER_CENT)))}
      </p>
    </>
  );
}
