import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { auditQuery, type AuditFilter } from '../../features/audit/api/audit.js';
import { AuditFilterFields } from '../../features/audit/components/audit-filter.js';
import { AuditList } from '../../features/audit/components/audit-list.js';
import { texts } from '../../features/audit/texts.js';
import { membersQuery } from '../../features/members/api/members.js';
import { Empty } from '../../shared/ui/empty.js';
import { More } from '../../shared/ui/more.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function AuditPage() {
  const { teamId } = useMembership().membership;
  const [filter, setFilter] = useState<AuditFilter>({});
  const people = useQuery(membersQuery(teamId)).data ?? [];
  const trail = useInfiniteQuery(auditQuery(teamId, filter));
  return (
    <Page title={texts.title} lead={texts.lead}>
      <AuditFilterFields filter={filter} onChange={setFilter} people={people} />
      <QueryView
        query={trail}
        isEmpty={({ pages }) => pages.every(({ items }) => items.length === 0)}
        empty={<Empty title={texts.none}>{texts.noneLead}</Empty>}
      >
        {({ pages }) => <AuditList entries={pages.flatMap(({ items }) => items)} />}
      </QueryView>
      <More query={trail} label={texts.older} />
    </Page>
  );
}
