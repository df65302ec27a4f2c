import dynamic from 'next/dynamic';

/** See `readings-card.tsx`; it comes with the first unit that has a go. */
export const ReadingsCard = dynamic(() =>
  import('@/lib/ui/station/readings-card').then((module) => module.ReadingsCard),
);
