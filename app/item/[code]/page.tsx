import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { allowedActions } from '@/app/unit/allowed-actions';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readItemRecord } from '@/lib/server/read-item-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ItemPage } from '@/lib/ui/item/item-page';
import { en } from '@/lib/ui/messages/en';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

const t = createTranslator({ locale: 'en', messages: en, namespace: 'item' });

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: t('title', { item: pageCode((await params).code) }) };
}

/** What an item is, where it stood, and who used it. */
export default async function ItemCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  const principal = await requirePrincipal('screen:item', { returnTo: `/item/${encodeURIComponent(code)}` });
  const record = codeFault(code) === null ? await readItemRecord(code) : null;
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('unknown.item', { code })}
        text={t('unknown.text')}
        trace={t('unknown.trace', { code })}
      />
    );
  return <ItemPage record={record} actions={allowedActions(principal)} />;
}
