/**
 * The idempotency key of one submission. It stays the same while the same message is sent again (a retry on a
 * bad line), and changes with the message or after the API has taken it.
 */
export class SubmissionKey {
  private message: string | undefined;
  private key = '';

  constructor(private readonly newKey: () => string = () => crypto.randomUUID()) {}

  for(message: unknown): string {
    const text = JSON.stringify(message) ?? '';
    if (text !== this.message) {
      this.message = text;
      this.key = this.newKey();
    }
    return this.key;
  }

  /** The API has answered: the next submission is a new one, even with the same words. */
  taken(): void {
    this.message = undefined;
  }
}
