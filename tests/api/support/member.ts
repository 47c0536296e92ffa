import request, { type Test } from 'supertest';
import type { TestService } from './service.js';

export const PASSWORD = 'a sentence nobody guesses';
let people = 0;

/** A person with a cookie of their own, who may be signed in and belong to teams. */
export class Member {
  private cookie: string | undefined;
  private token: string | undefined;
  readonly email: string;

  constructor(private readonly service: Pick<TestService, 'url'>) {
    people += 1;
    this.email = `person-${people}@team.example`;
  }

  get(path: string): Test {
    return this.send('get', path);
  }

  post(path: string, body?: object | string): Test {
    return this.send('post', path).send(body);
  }

  put(path: string, body: object, version?: number): Test {
    const call = this.send('put', path);
    if (version !== undefined) void call.set('if-match', `"${version}"`);
    return call.send(body);
  }

  delete(path: string): Test {
    return this.send('delete', path);
  }

  /** A file of runs, as `text/csv`. */
  postCsv(path: string, csv: string): Test {
    return this.send('post', path).set('content-type', 'text/csv').send(csv);
  }

  /** An archive of a team, as its own type. */
  postArchive(archive: object | string, idempotencyKey?: string): Test {
    const call = this.send('post', '/teams/import').set(
      'content-type',
      'application/vnd.loamledger.team+json',
    );
    if (idempotencyKey !== undefined) void call.set('idempotency-key', idempotencyKey);
    return call.send(typeof archive === 'string' ? archive : JSON.stringify(archive));
  }

  send(method: 'get' | 'post' | 'put' | 'delete' | 'patch', path: string): Test {
    const call = request(this.service.url)[method](path);
    if (this.cookie !== undefined) void call.set('cookie', this.cookie);
    if (this.token !== undefined) void call.set('authorization', `Bearer ${this.token}`);
    return call;
  }

  /** The cookie as a header, for calls that are not made here. */
  get cookieHeader(): string {
    return this.cookie ?? '';
  }

  /** The token as a header, likewise. */
  get authorization(): string {
    return `Bearer ${this.token ?? ''}`;
  }

  /** Keeps the cookie that an answer sets. */
  keep(answer: { headers: Record<string, unknown> }): void {
    const [cookie = ''] = answer.headers['set-cookie'] as string[];
    this.cookie = cookie.split(';')[0];
  }

  /** Acts by an API token from now on. */
  use(token: string): this {
    this.token = token;
    return this;
  }

  async signUp(): Promise<this> {
    const credentials = { email: this.email, password: PASSWORD, displayName: 'Person' };
    this.keep(await this.post('/accounts', credentials).expect(201));
    return this;
  }
}
