/**
 * `npm test`: every check, then every test, on a throw-away Postgres. What follows `--` goes to the test runner
 * (`npm test -- --project api`) and leaves the checks out. The last line says how many passed and failed.
 */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { prepare } from './bootstrap/prepare.mjs';
import { cacheDirectory, root } from './places.mjs';
import { startThrowaway } from './postgres/embedded.mjs';
import { run } from './process/run.mjs';
import { stopSignal } from './process/stop-signal.mjs';

const resultFile = join(cacheDirectory, 'test-results.json');
const signal = stopSignal();
const tally = { passed: 0, failed: 0, skipped: 0 };

process.umask(0o022);
// What a developer has set for `npm start` is not for the tests.
for (const name of ['DATABASE_URL', 'DATABASE_APP_URL', 'LOAMLEDGER_DATA_DIR', 'PORT', 'HOST', 'NODE_ENV']) {
  Reflect.deleteProperty(process.env, name);
}
try {
  await prepare(signal);
  const runnerOptions = process.argv.slice(2);
  if (runnerOptions.length === 0) await runChecks();
  await runTests(runnerOptions);
} catch (error) {
  tally.failed += 1;
  console.error(error instanceof Error ? error.message : error);
}
const { passed, failed, skipped } = tally;
console.log(`\n${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`);
process.exitCode = failed > 0 || signal.aborted ? 1 : 0;

/** Each `check:` script of the root counts as one test; one that fails does not keep the others from running. */
async function runChecks() {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  for (const name of Object.keys(scripts).filter((script) => script.startsWith('check:'))) {
    console.log(`\n${name}`);
    if (await succeeds('npm', ['run', '--silent', name])) tally.passed += 1;
    else tally.failed += 1;
  }
}

/** @param {readonly string[]} runnerOptions */
async function runTests(runnerOptions) {
  rmSync(resultFile, { force: true });
  const server = process.env.TEST_DATABASE_URL ? undefined : await startThrowaway();
  if (server) process.env.TEST_DATABASE_URL = server.url;
  try {
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${resultFile}`];
    const vitest = join('node_modules', 'vitest', 'vitest.mjs');
    const options = ['run', '--config', 'tests/vitest.config.ts', ...reporters, ...runnerOptions];
    const isGood = await succeeds(process.execPath, [vitest, ...options]);
    const result = JSON.parse(readFileSync(resultFile, 'utf8'));
    tally.passed += result.numPassedTests;
    tally.skipped += result.numPendingTests + result.numTodoTests;
    // A file that could not be loaded fails the run without failing a test.
    tally.failed += isGood ? 0 : Math.max(1, result.numFailedTests);
  } finally {
    await server?.stop();
  }
}

/** @param {string} command @param {readonly string[]} args */
async function succeeds(command, args) {
  try {
    await run(command, args, { signal });
    return true;
  } catch (error) {
    if (signal.aborted) throw error;
    return false;
  }
}
