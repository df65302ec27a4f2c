import type { ReactNode } from 'react';
import classes from '@/lib/ui/section.module.css';

/** A part of a screen under a heading of its own; `beside` stands at the other end of the heading. */
export function Section({
  title,
  beside,
  children,
}: {
  title: ReactNode;
  beside?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className={classes.section}>
      <div className={classes.head}>
        <h2>{title}</h2>
        {beside}
      </div>
      {children}
    </section>
  );
}
