import { type CSSVariablesResolver, createTheme } from '@mantine/core';

/** One look for every screen: the system's own font, so that nothing is fetched, and contrast that follows the colour. */
export const theme = createTheme({
  fontFamily: 'system-ui, "Noto Sans", "DejaVu Sans", sans-serif',
  fontFamilyMonospace: 'ui-monospace, "Noto Sans Mono", "DejaVu Sans Mono", monospace',
  autoContrast: true,
  primaryShade: { light: 8, dark: 8 },
});

/** Quiet text and faults with the contrast that WCAG 2.2 AA asks of small text (4.5 : 1), which Mantine's own lack. */
export const cssVariablesResolver: CSSVariablesResolver = () => ({
  variables: {},
  light: {
    '--mantine-color-dimmed': 'var(--mantine-color-gray-7)',
    '--mantine-color-placeholder': 'var(--mantine-color-gray-7)',
    '--mantine-color-error': 'var(--mantine-color-red-9)',
  },
  dark: {
    '--mantine-color-dimmed': 'var(--mantine-color-dark-1)',
    '--mantine-color-placeholder': 'var(--mantine-color-dark-1)',
    '--mantine-color-error': 'var(--mantine-color-red-4)',
  },
});
