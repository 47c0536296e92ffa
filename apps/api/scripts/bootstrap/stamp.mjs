import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheDirectory, root } from '../places.mjs';

/** Folders that installing and building make inside those that are hashed. */
const made = new Set(['node_modules', 'dist', 'generated']);

/**
 * One hash over the names and contents of files and whole folders of the clone.
 * @param {readonly string[]} paths  relative to the clone; one that does not exist counts as absent
 */
export function hashOf(paths) {
  const hash = createHash('sha256');
  for (const file of paths.flatMap(filesOf)) hash.update(`${file}\0`).update(readFileSync(join(root, file)));
  return hash.digest('hex');
}

/** @param {string} path @returns {string[]} */
function filesOf(path) {
  const stat = statSync(join(root, path), { throwIfNoEntry: false });
  if (!stat) return [];
  if (!stat.isDirectory()) return [path];
  return readdirSync(join(root, path))
    .filter((name) => !made.has(name))
    .sort()
    .flatMap((name) => filesOf(join(path, name)));
}

/**
 * Does `work` unless it was last done for the same sources and its result is still there.
 * @param {string} name
 * @param {{ sources: readonly string[], result: string }} step
 * @param {() => Promise<unknown>} work
 */
export async function onceFor(name, { sources, result }, work) {
  const stamp = join(cacheDirectory, `${name}.stamp`);
  const hash = hashOf(sources);
  if (existsSync(join(root, result)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  await work();
  mkdirSync(cacheDirectory, { recursive: true });
  writeFileSync(stamp, hash);
}
