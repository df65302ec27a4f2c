'use client';

import { Button } from '@mantine/core';
import { IconQrcode } from '@tabler/icons-react';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { LabelKind } from '@/lib/domain/events/vocabulary';

/** Leads to the labels of one thing. */
export function LabelsLink({ kind, code }: { kind: LabelKind; code: string }) {
  const t = useTranslations('labels');
  return (
    <Button
      component={Link}
      className="rk-no-print"
      aria-label={t('linkOf', { code })}
      href={`/labels?kind=${kind}&codes=${encodeURIComponent(code)}`}
      prefetch={false}
      variant="default"
      leftSection={<IconQrcode aria-hidden />}
    >
      {t('link')}
    </Button>
  );
}
