import type { Icon } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import classes from '@/lib/ui/trouble.module.css';

/** Something that stands in the way, said before everything else: in a word, a shape and a colour, then why. */
export function Trouble({
  meaning,
  shape: Shape,
  title,
  children,
}: {
  meaning: 'stop' | 'caution' | 'quiet';
  shape: Icon;
  title: string;
  children?: ReactNode;
}) {
  return (
    <div className={classes.trouble} data-meaning={meaning}>
      <Shape aria-hidden />
      <p>
        <strong>{title}</strong> {children}
      </p>
    </div>
  );
}
