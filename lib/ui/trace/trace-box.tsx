'use client';

import { useRouter } from 'next/navigation';
import { useTranslations } from 'use-intl';
import { ScanBox } from '@/lib/ui/scan-box';

/** The one box that takes anything: the server finds out what the code is. */
export function TraceBox() {
  const t = useTranslations('trace.box');
  const router = useRouter();
  return (
    <ScanBox
      label={t('label')}
      description={t('hint')}
      size="lg"
      onScan={(code) => router.push(`/trace?code=${encodeURIComponent(code)}`)}
    />
  );
}
