import { useQuery } from '@tanstack/react-query';
import { tokensQuery } from '../../features/tokens/api/tokens.js';
import { TokenForm } from '../../features/tokens/components/token-form.js';
import { TokenList } from '../../features/tokens/components/token-list.js';
import { texts } from '../../features/tokens/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function TeamTokensPage() {
  const { teamId } = useMembership().membership;
  const tokens = useQuery(tokensQuery(teamId));
  return (
    <Page title={texts.title} lead={texts.lead}>
      <QueryView
        query={tokens}
        isEmpty={(items) => items.length === 0}
        empty={<Empty title={texts.none}>{texts.noneLead}</Empty>}
      >
        {(items) => <TokenList teamId={teamId} tokens={items} />}
      </QueryView>
      <Section title={texts.make}>
        <TokenForm teamId={teamId} />
      </Section>
    </Page>
  );
}
