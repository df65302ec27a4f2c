import { Button, type CSSVariablesResolver, createTheme, Input } from '@mantine/core';
import { meaningVariables, palette } from '@/lib/ui/palette';

/** Smallest edge of anything to press, for gloves. */
const TARGET_PX = '48px';

/** One look for every screen: paper and ink, the system's own fonts so that nothing is fetched, one blue to act. */
export const theme = createTheme({
  fontFamily: 'system-ui, "Noto Sans", "DejaVu Sans", sans-serif',
  fontFamilyMonospace: 'ui-monospace, "Noto Sans Mono", "DejaVu Sans Mono", monospace',
  fontSizes: { xs: '0.875rem', sm: '0.9375rem', md: '1.0625rem', lg: '1.25rem', xl: '1.5rem' },
  headings: {
    fontWeight: '650',
    sizes: {
      h1: { fontSize: '1.75rem', lineHeight: '1.2' },
      h2: { fontSize: '1.375rem', lineHeight: '1.25' },
      h3: { fontSize: '1.125rem', lineHeight: '1.3' },
    },
  },
  colors: palette,
  primaryColor: 'blue',
  primaryShade: { light: 8, dark: 7 },
  autoContrast: true,
  defaultRadius: 'sm',
  respectReducedMotion: true,
  components: {
    Button: Button.extend({
      defaultProps: { size: 'md' },
      vars: (_theme, { size }) => ({ root: size === 'md' ? { '--button-height': TARGET_PX } : {} }),
    }),
    // Without `Modal.extend`, which would bring the dialog's code to every page.
    Modal: { styles: { title: { fontSize: '1.375rem', fontWeight: 650 } } },
    Input: Input.extend({
      vars: (_theme, { size }) => ({
        wrapper: size === undefined || size === 'sm' || size === 'md' ? { '--input-height': TARGET_PX } : {},
      }),
    }),
  },
});

/** Mantine's own surfaces, quiet text and faults in our colours, with the contrast of WCAG 2.2 AA (4.5 : 1). */
export const cssVariablesResolver: CSSVariablesResolver = () => {
  const ours = {
    '--mantine-color-body': 'var(--rk-surface)',
    '--mantine-color-text': 'var(--rk-ink)',
    '--mantine-color-dimmed': 'var(--rk-quiet)',
    '--mantine-color-placeholder': 'var(--rk-quiet)',
    '--mantine-color-error': 'var(--rk-stop)',
    '--mantine-color-anchor': 'var(--rk-act)',
    '--mantine-color-default': 'var(--rk-surface)',
    '--mantine-color-default-hover': 'var(--rk-raised)',
    '--mantine-color-default-color': 'var(--rk-ink)',
    '--mantine-color-default-border': 'var(--rk-line-strong)',
  };
  return {
    variables: {},
    light: { ...meaningVariables.light, ...ours },
    dark: { ...meaningVariables.dark, ...ours },
  };
};
