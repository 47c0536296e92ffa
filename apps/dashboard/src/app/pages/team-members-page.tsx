import { useQuery } from '@tanstack/react-query';
import { membersQuery } from '../../features/members/api/members.js';
import { InviteForm } from '../../features/members/components/invite-form.js';
import { MemberList } from '../../features/members/components/member-list.js';
import { texts } from '../../features/members/texts.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function TeamMembersPage() {
  const { account, membership } = useMembership();
  const { teamId, role } = membership;
  const members = useQuery(membersQuery(teamId));
  const riders = useQuery(ridersQuery(teamId)).data ?? [];
  const canChange = role === 'mechanic';
  return (
    <Page title={texts.title}>
      <QueryView query={members}>
        {(items) => (
          <>
            <MemberList
              teamId={teamId}
              members={items}
              riderName={(id) => riders.find((rider) => rider.id === id)?.name ?? ''}
              canChange={canChange}
              ownAccountId={account.id}
            />
            {canChange && (
              <Section title={texts.invite}>
                <InviteForm teamId={teamId} riders={riders} />
              </Section>
            )}
          </>
        )}
      </QueryView>
    </Page>
  );
}
