import type { ReactNode } from 'react';
import classes from '@/lib/ui/facts.module.css';

/** What is known of a thing, name over value, in one row that wraps; facts without a value are left out. */
export function Facts({ facts }: { facts: readonly (readonly [name: string, value: ReactNode])[] }) {
  return (
    <dl className={classes.facts}>
      {facts.map(([name, value]) =>
        value === null || value === undefined || value === false || value === '' ? null : (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ),
      )}
    </dl>
  );
}
