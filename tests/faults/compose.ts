import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { clone } from './house.js';

/** A container as `docker-compose.yml` describes it, as far as we ask. */
export interface Container {
  readonly image: string;
  readonly user?: string;
  readonly command?: readonly string[];
  readonly environment: Readonly<Record<string, string>>;
  readonly depends_on?: Readonly<Record<string, { readonly condition: string }>>;
  readonly ports?: readonly string[];
  readonly read_only?: boolean;
  readonly cap_drop?: readonly string[];
  readonly security_opt?: readonly string[];
}

/**
 * The containers of `docker-compose.yml` where `.env` holds `settings`.
 * @throws Error with the words of the file where one that must be set is not.
 */
export function containers(settings: Readonly<Record<string, string>>): Readonly<Record<string, Container>> {
  const text = readFileSync(join(clone, 'docker-compose.yml'), 'utf8');
  const file = parse(text, { merge: true }) as { services: Record<string, Container> };
  return fill(file.services, settings) as Record<string, Container>;
}

/** What an image of ours is started with: the last of each kind in its recipe holds. */
export function image(): {
  environment: Record<string, string>;
  command: string[];
  user: string;
  /** The images of others that it is built on. */
  bases: string[];
} {
  const text = readFileSync(join(clone, 'apps/api/Dockerfile'), 'utf8');
  const last = (word: string) => [...text.matchAll(new RegExp(`^${word} (.*)$`, 'gm'))].at(-1)?.[1] ?? '';
  const pairs = last('ENV')
    .split(' ')
    .map((pair) => pair.split('='));
  return {
    environment: Object.fromEntries(pairs) as Record<string, string>,
    command: JSON.parse(last('CMD')) as string[],
    user: last('USER'),
    bases: [...text.matchAll(/^(?:FROM|# *syntax *=) *(\S+)/gm)]
      .map(([, name = '']) => name)
      .filter(isForeign),
  };
}

/** Stages of the recipe itself have names without a version. */
const isForeign = (name: string): boolean => /[:/@]/.test(name);

/** `${NAME}`, `${NAME:-default}` and `${NAME:?what is wrong}`, wherever they stand in a text. */
const VARIABLE = /\$\{(\w+)(?::([-?])([^}]*))?\}/g;

function fill(part: unknown, settings: Readonly<Record<string, string>>): unknown {
  if (typeof part === 'string') {
    return part.replace(VARIABLE, (_whole, name: string, kind?: string, more = '') => {
      const value = settings[name];
      if (value) return value;
      if (kind === '?') throw new Error(`${name}: ${more}`);
      return more;
    });
  }
  if (Array.isArray(part)) return part.map((one) => fill(one, settings));
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([name, value]) => [name, fill(value, settings)]));
}
