import { createTheme, type CSSVariablesResolver, type MantineColorsTuple } from '@mantine/core';

/** Warm ink and paper, from the lightest ground to near-black; index as the kit counts its shades. */
const loam: MantineColorsTuple = [
  '#fdfbf7',
  '#f6f2ea',
  '#e9e3d7',
  '#d5ccbd',
  '#b5ab9a',
  '#857b6c',
  '#625a4e',
  '#443e35',
  '#2a2620',
  '#181510',
];

/** The one accent: what can be pressed. Shade 8 on light ground, shade 3 on dark, both above 7:1. */
const accent: MantineColorsTuple = [
  '#eaf4f7',
  '#d2e7ee',
  '#b2d7e3',
  '#8fc6d8',
  '#5fa6bd',
  '#3c879f',
  '#2a6d84',
  '#1f5a6e',
  '#174a5b',
  '#0d3341',
];

/** The one warning tone; it always stands beside a word and a sign. */
const warning: MantineColorsTuple = [
  '#fdf1dc',
  '#f9e2b8',
  '#f3c880',
  '#efb65a',
  '#d98f2b',
  '#b46d12',
  '#97570a',
  '#7e4605',
  '#6a3a03',
  '#4c2901',
];

/** Dark ground to light ink, in the order in which the kit reads its `dark` colour. */
const dark: MantineColorsTuple = [
  '#f4efe6',
  '#ddd6c9',
  '#bdb4a5',
  '#9c9384',
  '#7a7163',
  '#3a352d',
  '#25211b',
  '#181510',
  '#100e0a',
  '#080705',
];

/** Height of everything that is pressed or typed into: a gloved finger hits 48 px. */
const TARGET = '3rem';

export const theme = createTheme({
  black: '#181510',
  white: '#fdfbf7',
  colors: { loam, gray: loam, accent, warning, dark },
  primaryColor: 'accent',
  primaryShade: { light: 8, dark: 3 },
  autoContrast: true,
  focusRing: 'auto',
  respectReducedMotion: true,
  cursorType: 'pointer',
  fontFamily: 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif',
  fontSizes: { xs: '0.875rem', sm: '0.875rem', md: '1rem', lg: '1.25rem', xl: '1.75rem' },
  lineHeights: { xs: '1.4', sm: '1.4', md: '1.5', lg: '1.35', xl: '1.2' },
  spacing: { xs: '0.25rem', sm: '0.5rem', md: '1rem', lg: '1.5rem', xl: '2.5rem' },
  radius: { xs: '2px', sm: '3px', md: '3px', lg: '3px', xl: '3px' },
  defaultRadius: 'sm',
  headings: {
    fontWeight: '650',
    sizes: {
      h1: { fontSize: '1.75rem', lineHeight: '1.2' },
      h2: { fontSize: '1.25rem', lineHeight: '1.35' },
      h3: { fontSize: '1rem', lineHeight: '1.5' },
    },
  },
  components: {
    Button: { defaultProps: { variant: 'filled' }, vars: () => ({ root: { '--button-height': TARGET } }) },
    InputWrapper: {
      // Refused fields stay in line with those beside them: what is wrong stands above, where the hint is.
      defaultProps: { inputWrapperOrder: ['label', 'description', 'error', 'input'] },
      vars: () => ({
        label: { '--input-label-size': '1rem' },
        description: { '--input-description-size': '0.875rem' },
        error: { '--input-error-size': '0.875rem' },
      }),
    },
    Checkbox: { defaultProps: { size: 'md' } },
    Radio: { defaultProps: { size: 'md' } },
    PasswordInput: {
      defaultProps: {
        visibilityToggleFocusable: true,
        visibilityToggleButtonProps: { 'aria-label': 'Show or hide the password' },
      },
      vars: () => ({ root: { '--psi-button-size': '2.75rem' } }),
    },
    // A table that reaches beyond the window is moved by the keys too.
    TableScrollContainer: { defaultProps: { scrollAreaProps: { viewportProps: { tabIndex: 0 } } } },
    // A phone zooms into a field whose text is smaller than 16 px.
    Input: { vars: () => ({ wrapper: { '--input-height': TARGET, '--input-fz': '1rem' } }) },
    ActionIcon: { vars: () => ({ root: { '--ai-size': TARGET } }) },
  },
});

export const cssVariables: CSSVariablesResolver = () => ({
  variables: {},
  light: {
    '--mantine-color-body': loam[1],
    '--mantine-color-text': loam[9],
    '--mantine-color-dimmed': loam[6],
    '--mantine-color-placeholder': loam[6],
    '--mantine-color-error': warning[7],
    '--mantine-color-anchor': accent[8],
    '--mantine-color-default': loam[0],
    '--mantine-color-default-hover': loam[2],
    '--mantine-color-default-border': loam[5],
    '--ll-paper': loam[0],
    '--ll-ink': loam[9],
    '--ll-line': loam[3],
    '--ll-edge': loam[5],
    '--ll-tint': loam[2],
    '--ll-fill': loam[4],
    '--ll-pressable': accent[8],
    '--ll-on-pressable': loam[0],
    '--ll-warning': warning[7],
    '--ll-warning-ground': warning[0],
  },
  dark: {
    '--mantine-color-body': dark[7],
    '--mantine-color-text': dark[0],
    '--mantine-color-dimmed': dark[2],
    '--mantine-color-placeholder': dark[2],
    '--mantine-color-error': warning[3],
    '--mantine-color-anchor': accent[3],
    '--mantine-color-default': dark[6],
    '--mantine-color-default-hover': dark[5],
    '--mantine-color-default-border': dark[3],
    '--ll-paper': dark[6],
    '--ll-ink': dark[0],
    '--ll-line': dark[5],
    '--ll-edge': dark[3],
    '--ll-tint': dark[5],
    '--ll-fill': dark[4],
    '--ll-pressable': accent[3],
    '--ll-on-pressable': dark[7],
    '--ll-warning': warning[3],
    '--ll-warning-ground': dark[5],
  },
});
