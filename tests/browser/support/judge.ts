import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** The rules of accessibility by which pages are judged; put into every page of a context. */
export const AXE = axe.source;

/** Keeps what moved by itself: layout shifts that nobody caused. */
export const WATCH_SHIFTS = `
  window.shifts = [];
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      if (!entry.hadRecentInput)
        window.shifts.push({
          value: entry.value,
          of: entry.sources.map(({ node }) => (node && node.outerHTML ? node.outerHTML.slice(0, 120) : String(node))),
        });
  }).observe({ type: 'layout-shift', buffered: true });
`;

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** Which rules: what a page is called may be among what could not be read. */
const RULES = {
  all: { runOnly: { type: 'tag', values: TAGS } },
  'without heading': {
    runOnly: { type: 'tag', values: TAGS },
    rules: { 'page-has-heading-one': { enabled: false } },
  },
  contrast: { runOnly: { type: 'rule', values: ['color-contrast'] } },
};
/** Less than half of what counts as good practice for the whole life of a page. */
const MOST_SHIFT = 0.05;
/** What breaks a rule of accessibility, each with its place. */
export const violations = (page: Page, rules: keyof typeof RULES): Promise<string[]> =>
  page.evaluate(`
    axe.run(document, ${JSON.stringify({ resultTypes: ['violations'], ...RULES[rules] })}).then(({ violations }) =>
      violations.flatMap(({ id, nodes }) =>
        // What a bar at the edge of the window covers until the page is scrolled is no smaller for it.
        nodes.filter(({ failureSummary }) => !/partially obscured/.test(failureSummary || ''))
          .map(({ target, html, failureSummary }) =>
          [id, target.join(' '), html.slice(0, 160), (failureSummary || '').replace(/\\s+/g, ' ').slice(0, 240)].join(' | '))))
  `);

/** How far the page reaches beyond its window, and what does. */
export const overflow = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const root = document.documentElement;
    const beyond = root.scrollWidth - window.innerWidth;
    if (beyond <= 0) return [];
    const widest = [...document.querySelectorAll('body *')].filter((element) => {
      const { left, right } = element.getBoundingClientRect();
      return right > window.innerWidth + 1 || left < -1;
    });
    return ['reaches ' + beyond + ' px beyond the window: ' +
      widest.slice(0, 4).map((element) => element.outerHTML.slice(0, 120)).join(' … ')];
  })()`);

export async function shifts(page: Page): Promise<string[]> {
  const found = (await page.evaluate('window.shifts')) as { value: number; of: string[] }[];
  const sum = found.reduce((total, { value }) => total + value, 0);
  return sum < MOST_SHIFT ? [] : [`moves by ${sum.toFixed(3)}: ${JSON.stringify(found).slice(0, 600)}`];
}

/** What moves on a page of somebody who has asked for less motion. */
export async function motion(page: Page): Promise<string[]> {
  const running = (await page.evaluate(
    `document.getAnimations().filter(({ playState }) => playState === 'running').length`,
  )) as number;
  return running === 0 ? [] : [`${running} things move under reduced motion`];
}

/** What the content security policy refuses the page from now on. */
export function refusals(page: Page): string[] {
  const refused: string[] = [];
  page.on('console', (message) => {
    if (/content security policy/i.test(message.text())) refused.push(`${page.url()}: ${message.text()}`);
  });
  return refused;
}
