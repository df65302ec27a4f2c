import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { allowedActions } from '@/app/unit/allowed-actions';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readContainerRecord } from '@/lib/server/read-packing-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { en } from '@/lib/ui/messages/en';
import { ContainerPage } from '@/lib/ui/packing/container-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

const t = createTranslator({ locale: 'en', messages: en, namespace: 'packing' });

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: t('container', { code: pageCode((await params).code) }) };
}

/** What is in a container, and whether it left. */
export default async function ContainerCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  const principal = await requirePrincipal('screen:container', {
    returnTo: `/container/${encodeURIComponent(code)}`,
  });
  const record = codeFault(code) === null ? await readContainerRecord(code) : null;
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('unknownContainer', { code })}
        text={t('unknownText')}
        trace={t('trace', { code })}
      />
    );
  return <ContainerPage record={record} actions={allowedActions(principal)} />;
}
