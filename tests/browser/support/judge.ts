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

/** How far the page reaches beyond its window and what does, and what scrolls sideways in it without being a table. */
export const overflow = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const root = document.documentElement;
    const all = [...document.querySelectorAll('body *')];
    const scrolls = (element) => /auto|scroll/.test(getComputedStyle(element).overflowX);
    const scrolling = all.filter((element) =>
      scrolls(element) && element.scrollWidth > element.clientWidth + 1 && element.querySelector('table') === null
        && !element.matches('input, select, textarea'));
    const found = scrolling.map((element) => 'scrolls sideways without a table: ' + element.outerHTML.slice(0, 120));
    const beyond = root.scrollWidth - window.innerWidth;
    if (beyond <= 0) return found;
    const isWithin = (element) => {
      for (let at = element.parentElement; at !== null; at = at.parentElement) if (scrolls(at)) return true;
      return false;
    };
    const widest = all.filter((element) => {
      const { left, right } = element.getBoundingClientRect();
      return (right > window.innerWidth + 1 || left < -1) && !isWithin(element);
    });
    return [...found, 'reaches ' + beyond + ' px beyond the window: ' +
      widest.slice(0, 4).map((element) => element.outerHTML.slice(0, 120)).join(' … ')];
  })()`);

/** Where a line may end between a figure and its unit. */
export const partedFigures = (page: Page): Promise<string[]> =>
  page.evaluate(`
    [...document.body.innerText.matchAll(
      /[^\\n]{0,40}\\d (?:%|psi|bar|mm|mL|kg|lb|°C|°F|hPa|N|m|s)(?!\\w)[^\\n]{0,20}/g
    )].map(([words]) => 'parts a figure from its unit: ' + words)
  `);

/** What is told one tap away is on the page too. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate(`document.querySelectorAll('main details').forEach((details) => { details.open = true; })`);

/** Words of one picture, or of one row of ways, that stand over each other. */
export const overlaps = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const SLACK_PX = 2;
    const boxes = (parts) => [...parts].map((part) => {
      const range = document.createRange();
      range.selectNodeContents(part);
      return { text: part.textContent.trim(), box: range.getBoundingClientRect() };
    }).filter(({ text, box }) => text !== '' && box.width > 0);
    const over = ({ box: a }, { box: b }) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK_PX &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2 * SLACK_PX;
    return [...document.querySelectorAll('svg, nav')].flatMap((whole) => {
      const words = boxes(whole.querySelectorAll('text, a'));
      return words.flatMap((word, i) => words.slice(i + 1).filter((other) => over(word, other))
        .map((other) => 'words over each other: ' + word.text + ' / ' + other.text));
    });
  })()`);

/** What a person chooses in the browser who reads letters twice as large: 32 px where 16 are usual. */
export async function enlargeText(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
}

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
