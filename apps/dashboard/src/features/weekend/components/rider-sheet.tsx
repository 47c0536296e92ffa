import type { Baseline } from '../../../shared/http/reads/baselines.js';
import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import { sheetTexts as texts } from '../texts.js';
import { EndSheet } from './end-sheet.js';
import { SheetSessions } from './sheet-sessions.js';
import classes from './sheets.module.css';

/** Lines to write the runs of a bike on: its page has room for no more. */
const LINES = 6;

interface RiderSheetProps {
  readonly riderName: string;
  /** Track, day and air. */
  readonly lead: string;
  readonly baselines: readonly Baseline[];
  readonly bikeName: (id: string) => string;
  readonly sessions: readonly PlannedSession[];
  readonly planName: (id: string) => string;
}

/** What one rider takes to the track on paper: what is in the bikes, what to expect, when to ride, and lines for runs. */
export function RiderSheet(props: RiderSheetProps) {
  const { riderName, lead, baselines, bikeName, sessions, planName } = props;
  return (
    <article className={classes.sheet} aria-label={texts.riderSheet(riderName)}>
      <header>
        <h2>{riderName}</h2>
        <p>{lead}</p>
      </header>
      <SheetSessions sessions={sessions} planName={planName} />
      {baselines.map((baseline) => (
        <section key={baseline.id} className={classes.bike} aria-label={bikeName(baseline.bikeId)}>
          <h3 className={classes.bikeName}>{bikeName(baseline.bikeId)}</h3>
          <div className={classes.ends}>
            <EndSheet name={texts.fork} end={baseline.fork} />
            {baseline.shock !== null && <EndSheet name={texts.shock} end={baseline.shock} />}
          </div>
          <RunLines hasShock={baseline.shock !== null} />
        </section>
      ))}
      <p className={classes.caution}>{texts.caution}</p>
    </article>
  );
}

/** Lines to write on with a pencil. */
function RunLines({ hasShock }: { hasShock: boolean }) {
  return (
    <Scroller>
      <table className={classes.lines}>
        <caption>{texts.log}</caption>
        <thead>
          <tr>
            <th scope="col">{texts.logTime}</th>
            <th scope="col">{texts.logFork}</th>
            {hasShock && <th scope="col">{texts.logShock}</th>}
            <th scope="col">{texts.logNote}</th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: LINES }, (_, line) => (
            <tr key={line}>
              <td />
              <td />
              {hasShock && <td />}
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}
