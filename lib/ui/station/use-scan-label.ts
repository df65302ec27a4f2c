import { useTranslations } from 'use-intl';
import type { Session } from '@/lib/domain/station/session/session';

/** What the scan box asks for now. */
export function useScanLabel({ task }: Session): string {
  const t = useTranslations('station.scan');
  switch (task.step) {
    case 'working':
      return t('more');
    case 'parts':
      return t('parts');
    case 'defect':
    case 'confirming':
      return t('defect');
    case 'position':
      return t('position');
    case 'repairing':
      if (task.repair.position === null) return t('repairPosition');
      return t(task.repair.isRemoved ? 'repairPart' : 'repairOff');
    default:
      return t('unit');
  }
}
