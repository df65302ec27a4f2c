import { useTimeZone, useTranslations } from 'use-intl';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import { formatMoment } from '@/lib/ui/format-moment';

const DETAILS = ['position', 'station', 'operation', 'operator', 'from', 'to'] as const;

type Named = 'item' | 'lot' | 'part' | 'boardLot' | 'order' | 'panel' | 'container' | 'shipment' | 'customer';

/** A condition in words, without its must: `used item R-1 at L1-PLACE from 2026-03-02 08:15`. */
export function useConditionWords(): (condition: Condition) => string {
  const t = useTranslations('narrow.says');
  const tPlace = useTranslations('tags.place');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (text: string) => formatMoment(Date.parse(text), { timeZone, precision: 'minute' });

  function named(facts: Partial<Record<Named, string | undefined>>, names: readonly Named[]): string[] {
    return names.flatMap((name) => {
      const value = facts[name];
      return value === undefined ? [] : [t(name, { value })];
    });
  }

  function leading(condition: Condition): string[] {
    switch (condition.kind) {
      case 'used':
        return named(condition, ['item', 'lot', 'part']);
      case 'processed':
        return [t(condition.result ?? 'processed')];
      case 'defect':
        return [condition.code === undefined ? t('defect') : t('defectCode', { value: condition.code })];
      case 'repaired':
        return [t(condition.change ?? 'repaired')];
      case 'product': {
        const { product, revision } = condition;
        return [
          t('product', { value: product }),
          ...(revision === undefined ? [] : [t('revision', { value: revision })]),
        ];
      }
      case 'started':
        return [t('started'), ...named(condition, ['boardLot', 'order', 'panel'])];
      case 'place':
        return [t('place', { value: tPlace(condition.place) })];
      case 'packed':
        return [t('packed'), ...named(condition, ['container', 'shipment', 'customer'])];
      default:
        return condition satisfies never;
    }
  }

  return (condition) => {
    const facts: Partial<Record<(typeof DETAILS)[number], string | undefined>> = {
      position: undefined,
      ...condition,
    };
    const details = DETAILS.flatMap((name) => {
      const value = facts[name];
      if (value === undefined) return [];
      return [t(name, { value: name === 'from' || name === 'to' ? timeOf(value) : value })];
    });
    return [...leading(condition), ...details].join(' ');
  };
}
