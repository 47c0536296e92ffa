import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const DEFAULT_PATH = '/usr/bin/chromium';

/** Without a sandbox, as containers run it; the rest keeps it from calling anybody but the pages under test. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The machine's own Chromium, headless. A machine without one fails the tests instead of skipping them. */
export function launchBrowser(): Promise<Browser> {
  const executablePath = process.env['CHROMIUM_PATH'] || DEFAULT_PATH;
  if (!existsSync(executablePath)) {
    throw new Error(
      `The tests of the pages need Chromium, and there is none at ${executablePath}. ` +
        'Install it (Debian: `apt-get install chromium`) or name yours with CHROMIUM_PATH.',
    );
  }
  return chromium.launch({ executablePath, args: FLAGS });
}
