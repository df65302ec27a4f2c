import { createTheme } from '@mantine/core';

/** One look for every screen: the system's own font, so that nothing is fetched, and contrast that follows the colour. */
export const theme = createTheme({
  fontFamily: 'system-ui, "Noto Sans", "DejaVu Sans", sans-serif',
  fontFamilyMonospace: 'ui-monospace, "Noto Sans Mono", "DejaVu Sans Mono", monospace',
  autoContrast: true,
  primaryShade: { light: 8, dark: 8 },
});
