'use client';

import { useRouter } from 'next/navigation';
import { useTranslations } from 'use-intl';
import { ScanBox } from '@/lib/ui/scan-box';

/** The one box that takes anything: the server finds out what the code is; `isShort` on the pages of single things. */
export function TraceBox({ isShort = false }: { isShort?: boolean }) {
  const t = useTranslations('trace.box');
  const router = useRouter();
  return (
    <ScanBox
      label={t('label')}
      description={isShort ? undefined : t('hint')}
      size="lg"
      onScan={(code) => router.push(`/trace?code=${encodeURIComponent(code)}`)}
    />
  );
}
