import { Group } from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { DeskActions } from '@/lib/ui/desk/desk-actions';
import { DeskButton } from '@/lib/ui/desk/desk-button';
import { PlaceHoldButton } from '@/lib/ui/desk/place-hold-button';
import { LabelsLink } from '@/lib/ui/labels/labels-link';

/** What may be decided about a whole unit. */
export function UnitActions({
  unit,
  isScrapped,
  actions,
}: {
  unit: string;
  isScrapped: boolean;
  actions: DeskActions;
}) {
  const t = useTranslations('unit.actions');
  const { placeHold, scrapUnit } = actions;
  return (
    <Group className="rk-no-print" gap="xs">
      <LabelsLink kind="unit" code={unit} />
      <PlaceHoldButton kind="unit" id={unit} action={placeHold} />
      {scrapUnit !== null && !isScrapped && (
        <DeskButton
          label={t('scrap.label')}
          shape={IconTrash}
          title={t('scrap.title', { unit })}
          text={t('scrap.text')}
          confirm={t('scrap.confirm')}
          isGrave
          hidden={{ unit }}
          action={scrapUnit}
        />
      )}
    </Group>
  );
}
