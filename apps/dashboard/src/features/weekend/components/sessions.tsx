import { Button, Group, Table, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { plannedSessionsQuery, type PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { QueryView } from '../../../shared/ui/query-view.js';
import { useRemovePlannedSession } from '../api/planned-sessions.js';
import { lastDay } from '../model/weekend.js';
import { texts } from '../texts.js';
import { SessionForm, type RidablePlan } from './session-form.js';
import { SessionTable, whenOf } from './session-table.js';

interface SessionsProps {
  readonly teamId: string;
  readonly trackId: string;
  readonly day: string;
  readonly fleet: Fleet;
  /** The open test plans on this track. */
  readonly plans: readonly RidablePlan[];
  readonly planName: (id: string) => string;
}

/** Who rides when and what: the plan of the days. */
export function Sessions({ teamId, trackId, day, fleet, plans, planName }: SessionsProps) {
  const sessions = useQuery(plannedSessionsQuery(teamId, { trackId, fromDay: day, toDay: lastDay(day) }));
  const [edited, setEdited] = useState<PlannedSession | 'new' | null>(null);
  const form = { teamId, trackId, day, plans, riders: fleet.riders, onDone: () => setEdited(null) };
  return (
    <>
      <QueryView
        query={sessions}
        isEmpty={(items) => items.length === 0}
        empty={<Text>{texts.noSessions}</Text>}
      >
        {(items) => (
          <Table.ScrollContainer minWidth={560}>
            <SessionTable
              sessions={items}
              riderName={fleet.riderName}
              planName={planName}
              actionOf={(session) => (
                <SessionActions teamId={teamId} session={session} onChange={() => setEdited(session)} />
              )}
            />
          </Table.ScrollContainer>
        )}
      </QueryView>
      <div className="ll-screen-only">
        {edited === null ? (
          <Button variant="default" onClick={() => setEdited('new')}>
            {texts.planSession}
          </Button>
        ) : (
          <SessionForm
            key={edited === 'new' ? edited : edited.id}
            {...form}
            session={edited === 'new' ? undefined : edited}
          />
        )}
      </div>
    </>
  );
}

interface SessionActionsProps {
  readonly teamId: string;
  readonly session: PlannedSession;
  readonly onChange: () => void;
}

/** Changes a session, or takes it off after asking. */
function SessionActions({ teamId, session, onChange }: SessionActionsProps) {
  const [asking, setAsking] = useState(false);
  const remove = useRemovePlannedSession(teamId);
  const when = whenOf(session);
  if (!asking) {
    return (
      <Group gap="xs" wrap="nowrap" justify="end">
        <Button variant="subtle" aria-label={texts.changeOf(when)} onClick={onChange}>
          {texts.change}
        </Button>
        <Button variant="subtle" aria-label={texts.removeOf(when)} onClick={() => setAsking(true)}>
          {texts.remove}
        </Button>
      </Group>
    );
  }
  return (
    <div role="group" aria-label={texts.removeAsk}>
      <Text size="sm">{texts.removeAsk}</Text>
      <Failure error={remove.error} word={texts.notRemoved} />
      <Group gap="xs">
        <Button loading={remove.isPending} onClick={() => remove.mutate(session.id)}>
          {texts.removeYes}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.cancel}
        </Button>
      </Group>
    </div>
  );
}
