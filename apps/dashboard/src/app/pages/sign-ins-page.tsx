import { Button, Group } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { actingTokensQuery } from '../../features/account/api/acting-tokens.js';
import { signInsQuery, useSignOutEverywhere } from '../../features/account/api/sign-ins.js';
import { ChangePasswordForm } from '../../features/account/components/change-password-form.js';
import { SignInList } from '../../features/account/components/sign-in-list.js';
import { texts } from '../../features/account/sign-in-texts.js';
import { Below, isAsked } from '../../shared/ui/below.js';
import { Failure } from '../../shared/ui/error-view.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function SignInsPage() {
  const navigate = useNavigate();
  const { account } = useMembership();
  const signIns = useQuery(signInsQuery);
  const tokens = useQuery(actingTokensQuery);
  const mechanicIn = account.memberships.filter(({ role }) => role === 'mechanic');
  const signOut = useSignOutEverywhere();
  return (
    <Page title={texts.title} lead={texts.lead}>
      <QueryView query={signIns}>{(items) => <SignInList signIns={items} />}</QueryView>
      <Below isReady={isAsked(signIns) && isAsked(tokens)}>
        <Failure error={signOut.error} word={texts.notEnded} />
        <Group>
          <Button
            variant="default"
            loading={signOut.isPending}
            onClick={() => signOut.mutate(undefined, { onSuccess: () => void navigate({ to: '/sign-in' }) })}
          >
            {texts.everywhere}
          </Button>
        </Group>
        <ChangePasswordForm
          email={account.email}
          tokens={tokens.data?.inForce}
          openTeamIds={new Set(mechanicIn.map(({ teamId }) => teamId))}
        />
      </Below>
    </Page>
  );
}
