'use client';

import { IconHandStop } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { HoldTargetKind } from '@/lib/domain/events/vocabulary';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskButton } from '@/lib/ui/desk/desk-button';

/** Places a hold on a thing, for those who may. */
export function PlaceHoldButton({
  kind,
  id,
  action,
}: {
  kind: HoldTargetKind;
  id: string;
  action: DeskAction | null;
}) {
  const t = useTranslations('unit.actions.hold');
  if (action === null) return null;
  return (
    <DeskButton
      label={t('label')}
      shape={IconHandStop}
      title={t('title', { target: id })}
      text={t(`text.${kind}`)}
      confirm={t('confirm')}
      hidden={{ kind, id }}
      action={action}
    />
  );
}
