'use client';

import { useTranslations } from 'use-intl';
import type { Place } from '@/lib/domain/genealogy/answer';
import { CodeText } from '@/lib/ui/code-text';

/** Where exactly: the station, the container, or the shipment with its customer; nothing for the other places. */
export function PlaceText({ place }: { place: Place }) {
  const t = useTranslations('trace.units');
  switch (place?.kind) {
    case 'station':
      return place.station === null ? null : <CodeText code={place.station} />;
    case 'container':
      return <CodeText code={place.container} kind="container" />;
    case 'shipped':
      return (
        <>
          <CodeText code={place.shipment} kind="shipment" /> {t('toCustomer', { customer: place.customer })}
        </>
      );
    default:
      return null;
  }
}
