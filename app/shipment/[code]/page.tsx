import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readShipmentRecord } from '@/lib/server/read-packing-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ShipmentPage } from '@/lib/ui/packing/shipment-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('packing.shipment', { code: pageCode((await params).code) }) };
}

/** What left with a shipment. */
export default async function ShipmentCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  await requirePrincipal('screen:container', { returnTo: `/shipment/${encodeURIComponent(code)}` });
  const record = codeFault(code) === null ? await readShipmentRecord(code) : null;
  const t = await pageWords();
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('packing.unknownShipment', { code })}
        text={t('packing.unknownText')}
        trace={t('packing.trace', { code })}
      />
    );
  return <ShipmentPage record={record} />;
}
