import { DEMO_PASSWORD, MECHANIC } from '../../apps/api/src/demo/people.js';

/** Who was let in, and where. */
export interface SignedIn {
  readonly cookie: string;
  readonly teamId: string;
}

/** Signs the demo team's mechanic in to the service at an address. */
export async function signInToDemo(address: string): Promise<SignedIn> {
  const answer = await fetch(`${address}/api/v1/sign-ins`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email: MECHANIC.email, password: DEMO_PASSWORD }),
  });
  const { memberships } = (await answer.json()) as { memberships: { teamId: string }[] };
  return {
    cookie: answer.headers.get('set-cookie')?.split(';')[0] ?? '',
    teamId: memberships[0]?.teamId ?? '',
  };
}
