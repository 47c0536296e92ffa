/**
 * Joins the built service and its packages into a few files: loading some three thousand takes longer than all else
 * in a start. Threads go on loading the single files, which stay where they are.
 */
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const built = fileURLToPath(new URL('../../dist/', import.meta.url));
const bundled = join(built, 'bundle');

/** A module that asks for its own address means its own file's, also when it was joined with others. */
const ownAddresses = {
  name: 'own-addresses',
  /** @param {string} code @param {string} id */
  transform(code, id) {
    if (!id.startsWith(built) || !code.includes('import.meta.url')) return null;
    const own = `new URL(${JSON.stringify(relative(bundled, id))}, import.meta.url).href`;
    return { code: code.replaceAll('import.meta.url', own), map: null };
  },
};

const bundle = await rolldown({
  input: { 'create-app': join(built, 'create-app.js'), main: join(built, 'main.js') },
  platform: 'node',
  // Native code cannot be joined; and what messages inherit from one another is looked up at run time in the one
  // store that class-transformer keeps, which must not be there twice.
  external: [/^@node-rs\//, /^class-transformer(\/|$)/],
  plugins: [ownAddresses],
  // What the packages could use and we do not have is not found, as it is not found at run time.
  logLevel: 'silent',
});
await bundle.write({ dir: bundled, format: 'esm', keepNames: true, cleanDir: true });
await bundle.close();
