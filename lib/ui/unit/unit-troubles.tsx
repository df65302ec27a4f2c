import {
  IconAlertOctagonFilled,
  IconAlertTriangleFilled,
  IconHandStop,
  IconHelpHexagon,
  IconX,
} from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { UnitRecord } from '@/lib/domain/units/unit-record';
import { formatMoment } from '@/lib/ui/format-moment';
import { useCautionWords } from '@/lib/ui/shop/use-caution-words';
import { Trouble } from '@/lib/ui/trouble';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** Everything that keeps a unit from going on, and what whoever lets it go must know. */
export function UnitTroubles({ record }: { record: UnitRecord }) {
  const t = useTranslations('unit.trouble');
  const timeZone = useTimeZone() ?? 'UTC';
  const reasonOf = useHoldReason();
  const wordsOf = useCautionWords(record.unit);
  const { standing, holds } = record;
  return (
    <>
      {standing.isScrapped && (
        <Trouble meaning="stop" shape={IconX} title={t('scrapped')}>
          {t('scrappedText')}
        </Trouble>
      )}
      {holds
        .filter((hold) => hold.releasedAt === null)
        .map(({ hold, reason, at, automatic }) => (
          <Trouble key={hold} meaning="caution" shape={IconHandStop} title={t('held')}>
            {t('heldBy', {
              reason: reasonOf(reason),
              time: formatMoment(Date.parse(at), { timeZone, precision: 'minute' }),
              automatic: String(automatic),
            })}
          </Trouble>
        ))}
      {standing.failedAt !== null && !standing.isScrapped && (
        <Trouble meaning="stop" shape={IconAlertOctagonFilled} title={t('failed')}>
          {t('failedAt', { operation: standing.failedAt })}
        </Trouble>
      )}
      {record.cautions.map((caution) => (
        <Trouble
          key={wordsOf(caution)}
          meaning="caution"
          shape={IconAlertTriangleFilled}
          title={t(caution.what === 'held_inside' ? 'heldInside' : 'lacks')}
        >
          {wordsOf(caution)}
        </Trouble>
      ))}
      {!standing.isStarted && (
        <Trouble meaning="caution" shape={IconHelpHexagon} title={t('unstarted')}>
          {t('unstartedText')}
        </Trouble>
      )}
    </>
  );
}
