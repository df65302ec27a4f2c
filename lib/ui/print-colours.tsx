import { meaningVariables } from '@/lib/ui/palette';

/** Paper is light: a page that is dark on the screen is printed in the colours of the light scheme. */
export function PrintColours() {
  const variables = Object.entries({ ...meaningVariables.light, ...WHITE_PAPER });
  const declarations = variables.map(([name, value]) => `${name}:${value}`).join(';');
  return <style>{`@media print{:root:root[data-mantine-color-scheme]{${declarations}}}`}</style>;
}

// Without the scheme of its own the paper's margins are those of the screen: black.
const WHITE_PAPER = { '--rk-paper': '#fff', '--rk-surface': '#fff', 'color-scheme': 'light' };
