import { chromium, type Browser } from 'playwright-core';

/** The machine's own Chromium, headless, as a container runs it. */
export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] || '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
