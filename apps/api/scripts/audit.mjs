/** `npm run audit`: asks the package registry for known weaknesses of what runs, and fails where it names one. */
import { spawnSync } from 'node:child_process';
import { root } from './places.mjs';

const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--package-lock-only', '--json'], {
  cwd: root,
  encoding: 'utf8',
});
const told = readAnswer(stdout);
if (!told) {
  // Some registries between us and the public one keep no list: that must not stop whoever has no other.
  console.log('Nobody could be asked for known weaknesses of the packages.');
} else {
  const weak = Object.values(told);
  for (const { name, severity, range } of weak) console.error(`${name} ${range}: ${severity}`);
  console.log(`Packages that run, with known weaknesses: ${weak.length}.`);
  if (weak.length > 0) process.exitCode = 1;
}

/** @param {string} answer @returns {Record<string, { name: string, severity: string, range: string }> | undefined} */
function readAnswer(answer) {
  try {
    return JSON.parse(answer).vulnerabilities;
  } catch {
    return undefined;
  }
}
