import Link from 'next/link';
import classes from '@/lib/ui/code-text.module.css';
import { traceAddress } from '@/lib/ui/trace/trace-address';

/** A code that has no page of its own, leading to the units that have to do with it. */
export function TraceLink({ about, code }: { about: 'part' | 'station' | 'operator'; code: string }) {
  return (
    <Link className={classes.code} href={traceAddress({ [about]: code })} prefetch={false} data-code>
      {code}
    </Link>
  );
}
