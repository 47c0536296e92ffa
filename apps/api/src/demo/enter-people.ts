import type { AccountsService } from '../modules/accounts/accounts.service.js';
import { JoinDto, SignUpDto } from '../modules/accounts/accounts.dto.js';
import { RiderInputDto } from '../modules/riders/riders.dto.js';
import type { SignInsService } from '../modules/accounts/sign-ins.service.js';
import type { RidersService } from '../modules/riders/riders.service.js';
import type { MembersService } from '../modules/teams/members.service.js';
import { InvitationInputDto, TeamInputDto } from '../modules/teams/teams.dto.js';
import type { Role, TeamScope } from '../platform/http/scope.js';
import { checked } from './checked.js';
import { DEMO_PASSWORD, DEMO_TEAM_NAME, INVITED, MECHANIC, RIDERS, type RiderKey } from './people.js';

/** The team's people, ready to act. */
export interface DemoPeople {
  readonly mechanic: TeamScope;
  readonly riders: ReadonlyMap<RiderKey, { readonly id: string; readonly scope: TeamScope }>;
}

interface Services {
  readonly accounts: AccountsService;
  readonly members: MembersService;
  readonly riders: RidersService;
  readonly signIns: SignInsService;
}

/** No address: the demo signs in from nowhere. */
const ADDRESS = '';

/** Makes the mechanic's account and the team, enters the riders, and lets everybody else join by invitation. */
export async function enterPeople(services: Services): Promise<DemoPeople> {
  const { accounts, members, riders, signIns } = services;
  const { displayName, email } = MECHANIC;
  const signUp = await checked(SignUpDto, { displayName, email, password: DEMO_PASSWORD });
  const signedUp = await accounts.signUp(signUp, ADDRESS);
  const accountId = signedUp.account.id;
  const team = await members.createTeam(accountId, await checked(TeamInputDto, { name: DEMO_TEAM_NAME }));
  const mechanic = scopeOf(team.id, accountId, 'mechanic', null);
  const entered = new Map<RiderKey, { id: string; scope: TeamScope }>();
  for (const { displayName: name, email: address, role, rider } of INVITED) {
    const input = rider && (await checked(RiderInputDto, RIDERS[rider].input));
    const riderId = input && (await riders.create(mechanic, input)).id;
    const joined = await join(services, mechanic, { role, riderId }, { displayName: name, email: address });
    if (rider && riderId) {
      entered.set(rider, { id: riderId, scope: scopeOf(team.id, joined, role, riderId) });
    }
  }
  await signIns.end(signedUp.token);
  return { mechanic, riders: entered };
}

/** Invites a person, who joins with a new account. Returns the account. */
async function join(
  { accounts, members, signIns }: Services,
  mechanic: TeamScope,
  invited: { role: Role; riderId: string | null },
  person: { displayName: string; email: string },
): Promise<string> {
  const { path } = await members.invite(mechanic, await checked(InvitationInputDto, invited));
  const token = path.slice(path.indexOf('#') + 1);
  const input = await checked(JoinDto, { ...person, password: DEMO_PASSWORD, token });
  const { account, token: signIn } = await accounts.join(input, ADDRESS);
  await signIns.end(signIn);
  return account.id;
}

const scopeOf = (teamId: string, accountId: string, role: Role, riderId: string | null): TeamScope => ({
  teamId,
  accountId,
  role,
  riderId,
});
