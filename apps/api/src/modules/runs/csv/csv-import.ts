import { Refusal } from '../../../platform/errors/refusal.js';
import type { Session } from '../../sessions/sessions.service.js';
import type { Setup } from '../../setups/setups.service.js';
import type { KnownRun } from '../log-run.js';
import type { RunInputDto } from '../run-input.dto.js';
import type { RunRecords } from '../run-records.js';
import type { LineSessions } from './line-sessions.js';
import type { LineSetups } from './line-setups.js';
import type { CsvProblem } from './problem.js';
import { readRow, type RunDraft } from './read-row.js';
import type { TableRow } from './read-table.js';
import { asCsvProblems, messagesOf, type NameBooks, type RunMessages } from './run-messages.js';
import type { Part } from './columns.js';

/** A run as it was understood. */
export interface ImportedRun extends KnownRun {
  readonly line: number;
}

/** Turns the lines of a file into runs ready to be stored: their sessions and set-ups are made on the way. */
export class CsvImport {
  readonly runs: ImportedRun[] = [];
  readonly problems: CsvProblem[] = [];
  /** Bikes with a refused set-up: what their later runs were ridden with is not known. */
  private readonly unclear = new Set<string>();

  constructor(
    private readonly books: NameBooks,
    readonly sessions: LineSessions,
    readonly setups: LineSetups,
    private readonly recordsOf: (run: RunMessages, session: Session, setup: Setup) => Promise<RunRecords>,
    /** @throws Refusal that names the field. */
    private readonly check: (run: RunInputDto, records: RunRecords) => void,
  ) {}

  /** Makes one line's run ready, or notes its problems. */
  async take(row: TableRow): Promise<void> {
    const draft = readRow(row);
    const messages = messagesOf(draft, this.books);
    if (!('run' in messages)) {
      this.problems.push(...messages);
      return;
    }
    const setup = await this.setupOf(draft, messages);
    if (!setup) return;
    await this.noting(draft, 'run', async () => {
      const session = await this.sessions.of(messages.session);
      const records = await this.recordsOf(messages, session, setup);
      this.check(messages.run, records);
      this.runs.push({ line: draft.line, input: messages.run, records });
    });
  }

  private async setupOf(draft: RunDraft, { bike, setup, session }: RunMessages): Promise<Setup | undefined> {
    if (!setup && this.unclear.has(bike.id)) return undefined;
    const found = await this.noting(draft, 'setup', () => this.setups.of(bike, setup, session.day));
    if (found) this.unclear.delete(bike.id);
    else this.unclear.add(bike.id);
    return found;
  }

  /** Runs `work`; a refusal becomes a problem of the line. The transaction stays usable: it refused before storing. */
  private async noting<T>(draft: RunDraft, part: Part, work: () => Promise<T>): Promise<T | undefined> {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const named = asCsvProblems(draft, part, error.fields);
      const whole = { line: draft.line, column: '', given: null, allowed: error.message };
      this.problems.push(...(named.length > 0 ? named : [whole]));
      return undefined;
    }
  }
}
