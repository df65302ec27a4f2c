import type { Icon } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import classes from '@/lib/ui/tags/tag.module.css';

/** Meanings of colour after IEC 60073; `strong` and `quiet` are neutral, louder and softer. */
export type Meaning = 'go' | 'stop' | 'caution' | 'act' | 'neutral' | 'strong' | 'quiet';

/** A state said three ways at once: a word, a shape and a colour. The word alone is enough. */
export function Tag({
  meaning,
  shape: Shape,
  children,
}: {
  meaning: Meaning;
  shape: Icon;
  children: ReactNode;
}) {
  return (
    <span className={classes.tag} data-meaning={meaning} data-tag={meaning}>
      <Shape aria-hidden />
      <span>{children}</span>
    </span>
  );
}
