import { mkdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Beside the other leavings of a run; not committed. */
const FOLDER = new URL('../../../.cache/screenshots/', import.meta.url).pathname;
/** A page that cannot be drawn any more must not keep the run, nor many pages on a busy machine. */
const LIMIT_MS = 5_000;
const LIMIT_OF_ALL_MS = 30_000;
const MAX_NAME = 120;

/** Pictures of the pages that a test file opens, each as its journey has left it: what a failed run looked like. */
export interface Pictures {
  readonly of: (page: Page, size: string) => void;
  readonly take: () => Promise<void>;
}

export function keepPictures(): Pictures {
  const opened: { page: Page; file: string }[] = [];
  return {
    of: (page, size) => {
      const { currentTestName = 'before the tests', testPath = 'unknown' } = expect.getState();
      const words = `${opened.length + 1} ${size} ${currentTestName}`;
      const folder = join(FOLDER, basename(testPath).replace(/\.test\.ts$/, ''));
      const file = `${words.replaceAll(/[^\w]+/g, '-').slice(0, MAX_NAME)}.png`;
      opened.push({ page, file: join(folder, file) });
    },
    take: async () => {
      const limit = performance.now() + LIMIT_OF_ALL_MS;
      for (const { page, file } of opened) {
        if (page.isClosed() || performance.now() > limit) continue;
        mkdirSync(join(file, '..'), { recursive: true });
        await page.screenshot({ path: file, fullPage: true, timeout: LIMIT_MS }).catch(() => undefined);
      }
    },
  };
}
