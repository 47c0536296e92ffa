import type { Run } from '../../../shared/http/reads/runs.js';
import { texts } from '../texts.js';

/** What was said about a run: why it is void, bottom-outs, the note. */
export function RunNote({ run }: { run: Run }) {
  const bottomOuts = (run.forkBottomOuts ?? 0) + (run.shockBottomOuts ?? 0);
  return (
    <>
      {run.voided !== null && (
        <div>
          <strong>{texts.voided}:</strong> {run.voided.reason}
          {run.voided.readingsCount && ` (${texts.readingsStill})`}
        </div>
      )}
      {bottomOuts > 0 && <div>{texts.bottomOuts(bottomOuts)}</div>}
      {run.note}
    </>
  );
}
