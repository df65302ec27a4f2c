import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { allowedActions } from '@/app/unit/allowed-actions';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readItemRecord } from '@/lib/server/read-item-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ItemPage } from '@/lib/ui/item/item-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('item.title', { item: pageCode((await params).code) }) };
}

/** What an item is, where it stood, and who used it. */
export default async function ItemCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  const principal = await requirePrincipal('screen:item', { returnTo: `/item/${encodeURIComponent(code)}` });
  const record = codeFault(code) === null ? await readItemRecord(code) : null;
  const t = await pageWords();
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('item.unknown.item', { code })}
        text={t('item.unknown.text')}
        trace={t('item.unknown.trace', { code })}
      />
    );
  return <ItemPage record={record} actions={allowedActions(principal)} />;
}
