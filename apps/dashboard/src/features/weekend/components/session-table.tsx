import { Table } from '@mantine/core';
import type { ReactNode } from 'react';
import { formatDay } from '../../../shared/format/time.js';
import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { texts } from '../texts.js';

interface SessionTableProps {
  readonly sessions: readonly PlannedSession[];
  readonly riderName: (id: string) => string;
  /** The name of a test plan; empty for one that is closed or gone. */
  readonly planName: (id: string) => string;
  readonly actionOf?: (session: PlannedSession) => ReactNode;
}

/** When a session starts, in words. */
export const whenOf = ({ day, startsAt }: PlannedSession) => `${formatDay(day)}, ${startsAt}`;

/** What is ridden in a session: one of the test plans that `planName` names, or whatever the riders like. */
export const whatOf = ({ testPlanId }: PlannedSession, planName: (id: string) => string) =>
  testPlanId === null ? texts.rideAndLog : texts.planOf(planName(testPlanId));

/** The sessions in the order in which they start. */
export function SessionTable({ sessions, riderName, planName, actionOf }: SessionTableProps) {
  return (
    <Table>
      <Table.Thead>
        <Table.Tr>
          <Table.Th>{texts.when}</Table.Th>
          <Table.Th>{texts.who}</Table.Th>
          <Table.Th>{texts.what}</Table.Th>
          {actionOf !== undefined && <Table.Th className="ll-screen-only" />}
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {sessions.map((session) => (
          <Table.Tr key={session.id}>
            <Table.Th scope="row">{whenOf(session)}</Table.Th>
            <Table.Td>{session.riderIds.map(riderName).join(', ')}</Table.Td>
            <Table.Td>
              {whatOf(session, planName)}
              {session.note !== '' && ` · ${session.note}`}
            </Table.Td>
            {actionOf !== undefined && <Table.Td className="ll-screen-only">{actionOf(session)}</Table.Td>}
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  );
}
