import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { transformWithOxc, type Plugin, type Rolldown } from 'vite';

const SOURCE = fileURLToPath(new URL('service-worker/service-worker.ts', import.meta.url));
/** The pages that must open without signal; what they import statically comes with them. */
const PAGES = [
  'my-bike-choosers',
  'queued-runs',
  'log-run-page',
  'plan-page',
  'pump-to',
  'account-choices',
  'kit',
];
const PUBLIC_FILES = ['/icon.svg', '/app.webmanifest'];
/** Smaller ones do not get smaller. */
const LEAST_COMPRESSED_BYTES = 1024;
const HIGHEST_GZIP = 9;

type Bundle = Rolldown.OutputBundle;

/** The chunk, what it imports, and their style sheets. */
function withImports(bundle: Bundle, name: string, found: Set<string>): void {
  if (found.has(name)) return;
  found.add(name);
  const chunk = bundle[name];
  if (chunk?.type !== 'chunk') return;
  chunk.viteMetadata?.importedCss.forEach((css) => found.add(css));
  chunk.imports.forEach((imported) => withImports(bundle, imported, found));
}

/** The files of the rider's pages, as addresses. */
function shellFiles(bundle: Bundle): string[] {
  const found = new Set<string>();
  for (const chunk of Object.values(bundle)) {
    if (chunk.type !== 'chunk') continue;
    if (chunk.isEntry || PAGES.includes(chunk.name)) withImports(bundle, chunk.fileName, found);
  }
  return [...[...found].sort().map((name) => `/${name}`), ...PUBLIC_FILES];
}

/** Writes a file compressed beside itself, both ways that browsers ask for. */
function compress(path: string): void {
  const plain = readFileSync(path);
  if (plain.length < LEAST_COMPRESSED_BYTES) return;
  writeFileSync(`${path}.br`, brotliCompressSync(plain));
  writeFileSync(`${path}.gz`, gzipSync(plain, { level: HIGHEST_GZIP }));
}

/** Writes the service worker with the list of what it keeps, and every file compressed beside itself. */
export function offlineShell(): Plugin {
  return {
    name: 'offline-shell',
    apply: 'build',
    enforce: 'post',
    async generateBundle(_, bundle) {
      const files = shellFiles(bundle);
      const { code } = await transformWithOxc(readFileSync(SOURCE, 'utf8'), SOURCE, {});
      const page = bundle['index.html'];
      const version = createHash('sha256')
        .update(JSON.stringify(files) + (page?.type === 'asset' ? String(page.source) : '') + code)
        .digest('hex')
        .slice(0, 16);
      const source = code
        .replace(/export \{\s*\};?/, '')
        .replaceAll('SHELL_FILES', JSON.stringify(files))
        .replaceAll('SHELL_VERSION', JSON.stringify(version));
      this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
    },
    // Only now is what the bundle holds what is on the disk.
    writeBundle({ dir = '' }, bundle) {
      for (const name of Object.keys(bundle)) {
        if (/\.(js|css|html|svg)$/.test(name)) compress(join(dir, name));
      }
    },
  };
}
