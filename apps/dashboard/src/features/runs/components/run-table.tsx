import { Button, Table } from '@mantine/core';
import { formatDay, formatRunTime } from '../../../shared/format/time.js';
import type { Run } from '../../../shared/http/reads/runs.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useRestoreRun } from '../api/restore-run.js';
import { readingText } from '../model/reading-text.js';
import { texts } from '../texts.js';
import { RunNote } from './run-note.js';
import { VoidRun } from './void-run.js';
import classes from './runs.module.css';

interface RunTableProps {
  readonly teamId: string;
  readonly runs: readonly Run[];
  /** Rider and bike of a run, in words. */
  readonly whoOf: (run: Run) => string;
  readonly canVoid: boolean;
}

/** Every run of a track, void ones included: nothing is silently left out. */
export function RunTable({ teamId, runs, whoOf, canVoid }: RunTableProps) {
  return (
    <Table.ScrollContainer minWidth={880}>
      <Table verticalSpacing="xs">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.day}</Table.Th>
            <Table.Th ta="end">{texts.order}</Table.Th>
            <Table.Th>{texts.who}</Table.Th>
            <Table.Th ta="end">{texts.time}</Table.Th>
            <Table.Th>{texts.fork}</Table.Th>
            <Table.Th>{texts.shock}</Table.Th>
            <Table.Th>{texts.note}</Table.Th>
            {canVoid && <Table.Th>{texts.act}</Table.Th>}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {runs.map((run) => (
            <Table.Tr key={run.id}>
              <Table.Td className={classes.whole}>
                {formatDay(run.day)} · {run.condition}
              </Table.Td>
              <Table.Td ta="end">{run.orderInSession}</Table.Td>
              <Table.Td>{whoOf(run)}</Table.Td>
              <Table.Td ta="end" className={classes.whole}>
                {run.timeS === null ? texts.notTimed : formatRunTime(run.timeS)}
              </Table.Td>
              <Table.Td>{readingText(run.fork)}</Table.Td>
              <Table.Td>{readingText(run.shock)}</Table.Td>
              <Table.Td>
                <RunNote run={run} />
              </Table.Td>
              {canVoid && (
                <Table.Td className="ll-screen-only">
                  {run.voided === null ? (
                    <VoidRun teamId={teamId} runId={run.id} />
                  ) : (
                    <CountAgain teamId={teamId} runId={run.id} />
                  )}
                </Table.Td>
              )}
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}

function CountAgain({ teamId, runId }: { teamId: string; runId: string }) {
  const restore = useRestoreRun(teamId);
  return (
    <>
      <Button variant="subtle" loading={restore.isPending} onClick={() => restore.mutate(runId)}>
        {texts.countAgain}
      </Button>
      <Failure error={restore.error} />
    </>
  );
}
