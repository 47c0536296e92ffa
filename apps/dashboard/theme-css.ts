import {
  convertCssVariables,
  DEFAULT_THEME,
  defaultCssVariablesResolver,
  mergeMantineTheme,
} from '@mantine/core';
import type { Plugin } from 'vite';
import { cssVariables, theme } from './src/app/kit/theme.js';

const NAME = 'virtual:theme.css';

type Variables = Record<string, string>;

/** What of `ours` the kit's own style sheet does not say already. */
const beyond = (ours: Variables, kits: Variables): Variables =>
  Object.fromEntries(Object.entries(ours).filter(([name, value]) => kits[name] !== value));

/** The variables of the theme as a style sheet, so that a page is styled before, and without, the kit's script. */
function themeCss(): string {
  const merged = mergeMantineTheme(DEFAULT_THEME, theme);
  const [kits, made, own] = [
    defaultCssVariablesResolver(DEFAULT_THEME),
    defaultCssVariablesResolver(merged),
    cssVariables(merged),
  ];
  const schemes = (['variables', 'light', 'dark'] as const).map((scheme) => [
    scheme,
    beyond({ ...made[scheme], ...own[scheme] }, kits[scheme]),
  ]);
  return convertCssVariables(Object.fromEntries(schemes), ':root');
}

export const themeStyleSheet = (): Plugin => ({
  name: 'theme-style-sheet',
  resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
  load: (id) => (id === `\0${NAME}` ? themeCss() : undefined),
});
