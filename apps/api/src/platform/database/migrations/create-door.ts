import type { QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

/** A function that runs with the owner's rights and answers one question, or does one thing, and nothing else. */
interface Door {
  readonly name: string;
  /** As in `wanted_id uuid, wanted_name text`. */
  readonly parameters: string;
  readonly definition: string;
}

/** Makes the function, for the application's role and nobody else. */
export async function createDoor(runner: QueryRunner, { name, parameters, definition }: Door): Promise<void> {
  const types = parameters.replaceAll(/\w+ ([\w[\]]+)/g, '$1');
  await runner.query(`create function ${name}(${parameters}) ${definition}`);
  await runner.query(`revoke all on function ${name}(${types}) from public`);
  await runner.query(`grant execute on function ${name}(${types}) to ${APP_ROLE}`);
}
