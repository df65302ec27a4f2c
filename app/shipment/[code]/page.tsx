import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readShipmentRecord } from '@/lib/server/read-packing-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { en } from '@/lib/ui/messages/en';
import { ShipmentPage } from '@/lib/ui/packing/shipment-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

const t = createTranslator({ locale: 'en', messages: en, namespace: 'packing' });

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: t('shipment', { code: pageCode((await params).code) }) };
}

/** What left with a shipment. */
export default async function ShipmentCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  await requirePrincipal('screen:container', { returnTo: `/shipment/${encodeURIComponent(code)}` });
  const record = codeFault(code) === null ? await readShipmentRecord(code) : null;
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('unknownShipment', { code })}
        text={t('unknownText')}
        trace={t('trace', { code })}
      />
    );
  return <ShipmentPage record={record} />;
}
