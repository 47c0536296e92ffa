import './kit-styles.js';
import { MantineProvider } from '@mantine/core';
import type { ReactNode } from 'react';
import { theme } from './theme.js';

/**
 * What the kit's components need around them. It comes with the first page that has forms or tables, so that the
 * rider's first page loads without it; the variables of the theme are in the style sheet already. It writes no style
 * sheet into the page, which the content security policy would refuse: of its components, those with sizes by width of
 * the screen (`cols={{ base: 1, md: 2 }}`) would.
 */
export function Kit({ children }: { children: ReactNode }) {
  return (
    <MantineProvider
      theme={theme}
      withCssVariables={false}
      withGlobalClasses={false}
      defaultColorScheme="auto"
    >
      {children}
    </MantineProvider>
  );
}
