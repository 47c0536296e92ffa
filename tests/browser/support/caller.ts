/** Calls the API as one signed-in person, as any client does. */
export class Caller {
  private cookie = '';

  constructor(private readonly address: string) {}

  /** The cookie of the sign-in, as a browser keeps it. */
  get signInCookie(): { name: string; value: string; url: string } {
    const [name = '', value = ''] = this.cookie.split('=');
    return { name, value, url: this.address };
  }

  async get<Answer>(path: string): Promise<Answer> {
    const answer = await fetch(`${this.address}/api/v1${path}`, { headers: { cookie: this.cookie } });
    if (!answer.ok) throw new Error(`GET ${path}: ${answer.status}`);
    return (await answer.json()) as Answer;
  }

  async post<Answer>(path: string, message: unknown): Promise<Answer> {
    const answer = await fetch(`${this.address}/api/v1${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.cookie },
      body: JSON.stringify(message),
    });
    const body: unknown = await answer.json();
    if (!answer.ok) throw new Error(`POST ${path}: ${answer.status} ${JSON.stringify(body)}`);
    const [cookie] = answer.headers.get('set-cookie')?.split(';') ?? [];
    if (cookie !== undefined) this.cookie = cookie;
    return body as Answer;
  }
}
