/** `npm run licences`: writes docs/licences.md from package-lock.json, which names every package and its licence. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './places.mjs';

/**
 * @typedef {object} Package
 * @property {string} name
 * @property {string} version
 * @property {string} licence   as an SPDX expression
 * @property {boolean} isTool   used to build or to test, and in nothing that runs
 * @property {boolean} hasInstallScript
 */

export const licencesPage = join(root, 'docs/licences.md');

const INTRODUCTION = `# Licences

Made from \`package-lock.json\` by \`npm run licences\`; a test holds it against the lock file, and refuses a licence that is
not named there as one we can keep to. Versions are pinned; npm checks each package against the digest in the lock file.
`;

/** Every package of the lock file, each version once, by name. @returns {Package[]} */
export function packages() {
  const { packages: all } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  /** @type {Map<string, Package>} */
  const found = new Map();
  for (const [path, entry] of Object.entries(all)) {
    const [, name] = /(?:^|\/)node_modules\/((?:@[^/]+\/)?[^/]+)$/.exec(path) ?? [];
    // Our own folders are linked there.
    if (name === undefined || entry.link) continue;
    const key = `${name} ${entry.version}`;
    const isTool = Boolean(entry.dev) && (found.get(key)?.isTool ?? true);
    const hasInstallScript = Boolean(entry.hasInstallScript);
    found.set(key, {
      name,
      version: entry.version,
      licence: entry.license ?? 'none',
      isTool,
      hasInstallScript,
    });
  }
  return [...found.values()].sort((a, b) => compare(a.name, b.name) || compare(a.version, b.version));
}

/** The page as it has to be. */
export function page() {
  const all = packages();
  const section = (/** @type {string} */ title, /** @type {Package[]} */ part) => [
    `## ${title}`,
    '',
    ...licencesOf(part).map(([licence, names]) => `**${licence}** (${names.length}): ${names.join(', ')}\n`),
  ];
  return [
    INTRODUCTION,
    ...section(
      'In what runs',
      all.filter(({ isTool }) => !isTool),
    ),
    ...section(
      'Tools, in nothing that runs',
      all.filter(({ isTool }) => isTool),
    ),
  ].join('\n');
}

/** @param {Package[]} part @returns {[string, string[]][]} */
function licencesOf(part) {
  /** @type {Map<string, string[]>} */
  const names = new Map();
  for (const { name, version, licence } of part) {
    names.set(licence, [...(names.get(licence) ?? []), `${name} ${version}`]);
  }
  return [...names].sort(([a], [b]) => compare(a, b));
}

/** Bytewise, so that the page is the same on every machine. @param {string} a @param {string} b */
const compare = (a, b) => (a < b ? -1 : Number(a > b));

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) writeFileSync(licencesPage, page());
