import {
  Button,
  NativeSelect,
  Stack,
  Text,
  useMantineColorScheme,
  type MantineColorScheme,
} from '@mantine/core';
import { Link, useNavigate } from '@tanstack/react-router';
import type { Account, Membership } from '../../features/account/api/account.js';
import { useSignOut } from '../../features/account/api/sign-out.js';
import { Failure } from '../../shared/ui/error-view.js';
import { homeOf } from '../home.js';
import { Kit } from '../kit/kit.js';
import { texts } from '../texts.js';

const SCHEMES: { value: MantineColorScheme; label: string }[] = [
  { value: 'auto', label: texts.device },
  { value: 'light', label: texts.light },
  { value: 'dark', label: texts.dark },
];

interface AccountPanelProps {
  readonly account: Account;
  readonly membership: Membership;
}

/** Who is signed in, where they can go, how the pages look, and the way out. */
export const AccountChoices = (props: AccountPanelProps) => (
  <Kit>
    <Choices {...props} />
  </Kit>
);

function Choices({ account, membership }: AccountPanelProps) {
  const navigate = useNavigate();
  const signOut = useSignOut();
  // Without transitions it would write a style into the page, which our own policy refuses.
  const { colorScheme, setColorScheme } = useMantineColorScheme({ keepTransitions: true });
  const switchTo = (teamId: string) => {
    const chosen = account.memberships.find((other) => other.teamId === teamId);
    if (chosen !== undefined) void navigate(homeOf(chosen));
  };
  return (
    <Stack>
      <Text size="sm">
        {texts.signedInAs} {account.email}, {texts.role[membership.role]} · {membership.teamName}
      </Text>
      {account.memberships.length > 1 && (
        <NativeSelect
          label={texts.switchTeam}
          value={membership.teamId}
          onChange={(event) => switchTo(event.currentTarget.value)}
          data={account.memberships.map(({ teamId, teamName }) => ({ value: teamId, label: teamName }))}
        />
      )}
      <NativeSelect
        label={texts.appearance}
        value={colorScheme}
        onChange={(event) => setColorScheme(event.currentTarget.value as MantineColorScheme)}
        data={SCHEMES}
      />
      <Link to="/teams/$teamId/units" params={{ teamId: membership.teamId }}>
        {texts.units}
      </Link>
      <Link to="/teams/$teamId/sign-ins" params={{ teamId: membership.teamId }}>
        {texts.signIns}
      </Link>
      <Failure error={signOut.error} />
      <Button
        variant="default"
        loading={signOut.isPending}
        onClick={() => signOut.mutate(undefined, { onSuccess: () => void navigate({ to: '/sign-in' }) })}
      >
        {texts.signOut}
      </Button>
    </Stack>
  );
}
