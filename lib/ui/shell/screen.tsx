import type { ReactNode } from 'react';
import classes from '@/lib/ui/shell/shell.module.css';

/** The `main` of a screen: its title (the one h1), what stands beside the title, and the screen itself. */
export function Screen({
  title,
  beside,
  children,
}: {
  title: ReactNode;
  beside?: ReactNode;
  children: ReactNode;
}) {
  return (
    <main className={classes.screen}>
      <div className={classes.title}>
        <h1>{title}</h1>
        {beside}
      </div>
      {children}
    </main>
  );
}
