/** What the panel can say. */
export type VerdictKind = 'go' | 'stop' | 'caution' | 'scan' | 'busy' | 'wait';

/**
 * One shape for each verdict, told apart without colour: a full circle with a tick, a full octagon with a bar, a full
 * triangle with a mark, four corners of a scanner's field, an hourglass.
 */
export function VerdictShape({ kind }: { kind: VerdictKind }) {
  return (
    <svg viewBox="0 0 100 100" aria-hidden="true" focusable="false">
      {shapeOf(kind)}
    </svg>
  );
}

function shapeOf(kind: VerdictKind) {
  const line = { fill: 'none', strokeWidth: 11, strokeLinecap: 'round', strokeLinejoin: 'round' } as const;
  switch (kind) {
    case 'go':
      return (
        <>
          <circle cx="50" cy="50" r="48" fill="currentColor" />
          <path d="M27 52 L44 69 L74 35" stroke="var(--verdict-paper)" {...line} />
        </>
      );
    case 'stop':
      return (
        <>
          <path d="M30 2 H70 L98 30 V70 L70 98 H30 L2 70 V30 Z" fill="currentColor" />
          <path
            d="M24 50 H76"
            stroke="var(--verdict-paper)"
            {...line}
            strokeWidth={16}
            strokeLinecap="butt"
          />
        </>
      );
    case 'caution':
      return (
        <>
          <path d="M50 4 L98 94 H2 Z" fill="currentColor" />
          <path d="M50 36 V62 M50 79 V79.1" stroke="var(--verdict-paper)" {...line} />
        </>
      );
    case 'scan':
      return (
        <path
          d="M8 30 V8 H30 M70 8 H92 V30 M92 70 V92 H70 M30 92 H8 V70 M24 50 H76"
          stroke="currentColor"
          {...line}
          strokeWidth={8}
        />
      );
    case 'busy':
    case 'wait':
      return (
        <path
          d="M24 8 H76 M24 92 H76 M30 8 C30 40 70 60 70 92 M70 8 C70 40 30 60 30 92"
          stroke="currentColor"
          {...line}
          strokeWidth={8}
        />
      );
    default:
      return kind satisfies never;
  }
}
