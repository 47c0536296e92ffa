import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { sheetTexts } from '../texts.js';
import { whatOf, whenOf } from './session-table.js';
import classes from './sheets.module.css';

interface SheetSessionsProps {
  readonly sessions: readonly PlannedSession[];
  readonly planName: (id: string) => string;
  /** Names who rides, where the sheet is for more than one. */
  readonly riderName?: (id: string) => string;
}

/** The sessions on paper. */
export function SheetSessions({ sessions, planName, riderName }: SheetSessionsProps) {
  return (
    <div role="group" className={classes.sessions} aria-label={sheetTexts.sessions}>
      <h3>{sheetTexts.sessions}</h3>
      {sessions.length === 0 ? (
        <p>{sheetTexts.noSessions}</p>
      ) : (
        <ul>
          {sessions.map((session) => (
            <li key={session.id}>
              <strong>{whenOf(session)}</strong>: {whatOf(session, planName)}
              {riderName !== undefined && ` · ${session.riderIds.map(riderName).join(', ')}`}
              {session.note !== '' && ` · ${session.note}`}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
