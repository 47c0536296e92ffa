import type { ReactNode } from 'react';
import { fillText } from '../../../shared/format/fill.js';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import type { Baseline, EndBaseline } from '../../../shared/http/reads/baselines.js';
import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import { advisedFill, clicksText, unbroken } from '../model/sheet.js';
import { sheetTexts as texts } from '../texts.js';
import { SheetSessions } from './sheet-sessions.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './sheets.module.css';

const PER_CENT = 100;

interface TeamSheetProps {
  readonly title: string;
  /** Day and air. */
  readonly lead: string;
  readonly baselines: readonly Baseline[];
  readonly nameOf: (baseline: Baseline) => string;
  readonly sessions: readonly PlannedSession[];
  readonly riderName: (id: string) => string;
  readonly planName: (id: string) => string;
  /** The picture of how hard the track hits. */
  readonly children: ReactNode;
}

/** The whole team on paper: a line for each end of each bike, the sessions, and how hard the track hits. */
export function TeamSheet(props: TeamSheetProps) {
  const { title, lead, baselines, nameOf, sessions, riderName, planName, children } = props;
  return (
    <article className={classes.sheet} aria-label={texts.teamSheet}>
      <header>
        <h2>{title}</h2>
        <p>{lead}</p>
      </header>
      <Scroller>
        <table className={classes.table}>
          <thead>
            <tr>
              <th scope="col">{texts.bike}</th>
              <th scope="col">{texts.end}</th>
              <th scope="col">{texts.fill}</th>
              <th scope="col">{texts.clicksColumn}</th>
              <th scope="col">{texts.left}</th>
              <th scope="col">{texts.risk}</th>
              <th scope="col">{texts.evidence}</th>
            </tr>
          </thead>
          {baselines.map((baseline) => (
            <tbody key={baseline.id}>
              <EndRow
                who={nameOf(baseline)}
                rows={baseline.shock === null ? 1 : 2}
                name={texts.fork}
                end={baseline.fork}
              />
              {baseline.shock !== null && <EndRow name={texts.shock} end={baseline.shock} />}
            </tbody>
          ))}
        </table>
      </Scroller>
      <p>{texts.leftIs}</p>
      <SheetSessions sessions={sessions} planName={planName} riderName={riderName} />
      <div className={classes.picture}>{children}</div>
    </article>
  );
}

interface EndRowProps {
  readonly who?: string;
  readonly rows?: number;
  readonly name: string;
  readonly end: EndBaseline;
}

function EndRow({ who, rows, name, end }: EndRowProps) {
  const { fill, remark } = advisedFill(end);
  return (
    <tr>
      {who !== undefined && (
        <th scope="rowgroup" rowSpan={rows}>
          {who}
        </th>
      )}
      <td>{name}</td>
      <td>
        {fill === null ? texts.notSet : <strong>{unbroken(fillText(fill))}</strong>}
        {remark !== null && <div>⚠ {remark}</div>}
      </td>
      <td>{clicksText(end.clicks)}</td>
      <td>{fill !== null && withUnit(formatNumber(fill.reserve95Mm), 'mm')}</td>
      <td>{fill !== null && unbroken(formatShare(fill.riskPct / PER_CENT))}</td>
      <td>{unbroken(end.evidence.level)}</td>
    </tr>
  );
}
