import { spawn } from 'node:child_process';
import { root } from '../places.mjs';

/** A command that did not end with status 0. */
export class CommandFailed extends Error {
  /** @param {string} command @param {string} how @param {string} output */
  constructor(command, how, output) {
    super(`\`${command}\` ${how}.${output ? `\n${output.trimEnd()}` : ''}`);
    this.name = 'CommandFailed';
  }
}

/**
 * Runs a command to its end and returns its standard output when `capture` is set; otherwise the command
 * writes to our own output. Standard input is `input`, or nothing.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions & { capture?: boolean, input?: string }} [options]
 * @returns {Promise<string>}
 */
export function run(command, args, { capture = false, input, ...options } = {}) {
  return new Promise((resolve, reject) => {
    const output = capture ? 'pipe' : 'inherit';
    const child = spawn(command, args, { cwd: root, ...options, stdio: ['pipe', output, output] });
    let stdout = '';
    let stderr = '';
    child.stdout?.setEncoding('utf8').on('data', (text) => (stdout += text));
    child.stderr?.setEncoding('utf8').on('data', (text) => (stderr += text));
    // A command may end without reading its input; its status tells what happened.
    child.stdin?.on('error', () => undefined).end(input ?? '');
    child.on('error', reject);
    child.on('close', (code, signal) => {
      if (code === 0) return resolve(stdout);
      const how = signal ? `was ended by ${signal}` : `ended with status ${code}`;
      reject(new CommandFailed([command, ...args].join(' '), how, stderr || stdout));
    });
  });
}
