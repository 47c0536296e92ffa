import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { Failure } from '../../../shared/ui/error-view.js';
import { RecordTable, type Column } from '../../../shared/ui/record-table.js';
import { useRemoveMember } from '../api/remove-member.js';
import type { Member } from '../api/members.js';
import { texts } from '../texts.js';
import { LinkPassword } from './link-password.js';
import { LinkSignIn } from './link-sign-in.js';

interface MemberListProps {
  readonly teamId: string;
  readonly members: readonly Member[];
  readonly riderName: (id: string) => string;
  readonly canChange: boolean;
  /** The membership of who is looking: nobody takes themselves out. */
  readonly ownAccountId: string;
}

export function MemberList({ teamId, members, riderName, canChange, ownAccountId }: MemberListProps) {
  const acts: Column<Member> = {
    title: texts.acts,
    cell: (member) =>
      member.accountId !== ownAccountId && (
        <Stack gap="sm" align="start">
          {member.role === 'rider' && <LinkSignIn teamId={teamId} member={member} />}
          <LinkPassword teamId={teamId} member={member} />
          <RemoveMember teamId={teamId} member={member} />
        </Stack>
      ),
  };
  return (
    <RecordTable
      rows={members}
      columns={[
        { title: texts.name, cell: ({ displayName }) => displayName },
        { title: texts.role, cell: ({ role }) => role },
        {
          title: texts.rider,
          cell: ({ riderId }) => (riderId === null ? texts.notRiding : riderName(riderId)),
        },
        ...(canChange ? [acts] : []),
      ]}
    />
  );
}

/** Asks before it acts. */
function RemoveMember({ teamId, member }: { teamId: string; member: Member }) {
  const [asking, setAsking] = useState(false);
  const remove = useRemoveMember(teamId);
  if (!asking) {
    return (
      <Button variant="default" onClick={() => setAsking(true)}>
        {texts.remove}
      </Button>
    );
  }
  return (
    <Stack gap="sm">
      {texts.removeAsk(member.displayName)}
      <Group gap="sm">
        <Button loading={remove.isPending} onClick={() => remove.mutate(member.id)}>
          {texts.removeYes}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.keep}
        </Button>
      </Group>
      <Failure error={remove.error} word={texts.notRemoved} />
    </Stack>
  );
}
