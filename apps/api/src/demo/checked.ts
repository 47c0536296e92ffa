import { validationPipe } from '../platform/http/validation.pipe.js';

/** The message as a request with this body would bring it: checked field by field. @throws Refusal naming each bad field. */
export async function checked<T extends object>(message: new () => T, body: T): Promise<T> {
  return (await validationPipe.transform(body, { type: 'body', metatype: message })) as T;
}
