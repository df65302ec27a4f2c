import dynamic from 'next/dynamic';

/** See `station-choice.tsx`; a tablet shows it once and not again, so it comes when it is needed. */
export const StationChoice = dynamic(() =>
  import('@/lib/ui/shop/station-choice').then((module) => module.StationChoice),
);
