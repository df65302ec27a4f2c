import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { allowedActions } from '@/app/unit/allowed-actions';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readLotRecord } from '@/lib/server/read-item-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { LotPage } from '@/lib/ui/item/lot-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('item.lotTitle', { lot: pageCode((await params).code) }) };
}

/** The items of a lot, and who used them. */
export default async function LotCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  const principal = await requirePrincipal('screen:item', { returnTo: `/lot/${encodeURIComponent(code)}` });
  const record = codeFault(code) === null ? await readLotRecord(code) : null;
  const t = await pageWords();
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('item.unknown.lot', { code })}
        text={t('item.unknown.text')}
        trace={t('item.unknown.trace', { code })}
      />
    );
  return <LotPage record={record} actions={allowedActions(principal)} />;
}
