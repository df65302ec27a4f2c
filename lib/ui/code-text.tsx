import Link from 'next/link';
import { type CodeKind, codeHref } from '@/lib/ui/code-href';
import classes from '@/lib/ui/code-text.module.css';

/** A code as it is scanned, in figures of one width; with a `kind` it leads to its page. Long codes wrap. */
export function CodeText({ code, kind }: { code: string; kind?: CodeKind }) {
  const href = kind === undefined ? null : codeHref(kind, code);
  if (href === null)
    return (
      <span className={classes.code} data-code>
        {code}
      </span>
    );
  return (
    <Link className={classes.code} href={href} prefetch={false} data-code>
      {code}
    </Link>
  );
}
