const BYTES = 16;
const HEX = 16;

/** A key that nobody else has drawn. Not `crypto.randomUUID`, which a plain address of the local network lacks. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(BYTES));
  return Array.from(bytes, (byte) => byte.toString(HEX).padStart(2, '0')).join('');
}
