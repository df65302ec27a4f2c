import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { allowedActions } from '@/app/unit/allowed-actions';
import { codeFault } from '@/lib/domain/codes';
import { pageCode } from '@/lib/server/http/page-code';
import { readContainerRecord } from '@/lib/server/read-packing-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ContainerPage } from '@/lib/ui/packing/container-page';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Props = { params: Promise<{ code: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('packing.container', { code: pageCode((await params).code) }) };
}

/** What is in a container, and whether it left. */
export default async function ContainerCodePage({ params }: Props) {
  const code = pageCode((await params).code);
  const principal = await requirePrincipal('screen:container', {
    returnTo: `/container/${encodeURIComponent(code)}`,
  });
  const record = codeFault(code) === null ? await readContainerRecord(code) : null;
  const t = await pageWords();
  if (record === null)
    return (
      <UnknownCode
        code={code}
        title={t('packing.unknownContainer', { code })}
        text={t('packing.unknownText')}
        trace={t('packing.trace', { code })}
      />
    );
  return <ContainerPage record={record} actions={allowedActions(principal)} />;
}
