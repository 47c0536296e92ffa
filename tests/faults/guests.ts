import { PASSWORD } from '../api/support/member.js';
import type { Route } from '../api/support/open-api.js';

/** Those that make a sign-in: sent without one, as a stranger's, or the one that is sent would end. */
const STRANGERS = ['post /sign-ins', 'post /accounts'];
/** Those that end sign-ins: sent with one that nobody else needs. */
const ENDINGS = ['delete /sign-ins', 'delete /sign-ins/current', 'delete /sign-ins/{id}'];

/** The cookie to send with a request to a route, which takes that of everybody else away from no one. */
export type CookieFor = (route: Route) => string | undefined;

/** Signs guests up, each for some requests that end sign-ins, until there are none left and the last stays signed out. */
export async function cookiesFor(address: string, shared: string, guests: number): Promise<CookieFor> {
  const cookies: string[] = [];
  for (let guest = 0; guest < guests; guest += 1) {
    const body = { email: `guest-${guest}@demo.example`, password: PASSWORD, displayName: 'Guest' };
    const answer = await fetch(`${address}/api/v1/accounts`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (answer.status !== 201) throw new Error(`A guest was answered ${answer.status}.`);
    cookies.push(answer.headers.get('set-cookie')?.split(';')[0] ?? '');
  }
  let sent = 0;
  return ({ method, path }) => {
    const route = `${method} ${path}`;
    if (STRANGERS.includes(route)) return undefined;
    if (!ENDINGS.includes(route)) return shared;
    sent += 1;
    return cookies[sent % cookies.length];
  };
}
