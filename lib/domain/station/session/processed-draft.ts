import type { EventDraft } from '@/lib/domain/station/event-draft';
import { scannedLines } from '@/lib/domain/station/product-picture';
import { readingFacts, readingsToGive } from '@/lib/domain/station/session/reading-draft';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { SessionContext } from '@/lib/domain/station/session/session-input';
import { instantOf } from '@/lib/domain/time';

/** A part that is scanned at this station, its free positions on the unit in work, and what is used for it. */
export type PartToFit = { part: string; positions: string[]; item: string | null; isWithout: boolean };

/**
 * The parts that are scanned for the unit in work: those of its BOM that were scanned here lately, or for which a lot
 * is remembered. Positions that already have their part are left out; a part without any left is not asked for.
 */
export function partsToFit(
  work: Work,
  session: Session,
  { picture }: Pick<SessionContext, 'picture'>,
): PartToFit[] {
  const { product, unit } = work.about;
  if (product === null) return [];
  const isSameProduct = (row: { product: string; revision: string }) =>
    row.product === product.product && row.revision === product.revision;
  const lots = session.lots.filter(isSameProduct);
  const usual = new Set([...lots, ...picture.fits.filter(isSameProduct)].map((row) => row.part));
  return scannedLines(product).flatMap(({ part, positions }) => {
    if (!usual.has(part)) return [];
    const free = positions.filter((position) => !unit?.fitted.includes(position));
    if (positions.length > 0 && free.length === 0) return [];
    const item = lots.find((lot) => lot.part === part)?.item ?? null;
    return [{ part, positions: free, item, isWithout: work.without.includes(part) }];
  });
}

/** The result of the unit in work as an event; a clock that was set back since the go leaves its moment out. */
export function processedDraft(given: {
  work: Work;
  result: 'pass' | 'fail';
  session: Session;
  context: SessionContext;
}): EventDraft<'unit.processed'> {
  const { work, result, session, context } = given;
  const parts = partsToFit(work, session, context).flatMap(({ item, positions, isWithout }) =>
    item === null || isWithout
      ? []
      : [{ item, ...(positions.length > 0 && { positions, quantity: positions.length }) }],
  );
  const used = [...parts, ...work.tools];
  const defects = work.defects.map(({ code, position }, index) => ({
    code,
    ...(position !== null && { position }),
    ...(index === 0 && work.note !== '' && { note: work.note }),
  }));
  const readings = readingFacts(readingsToGive(work, session, context.picture));
  return {
    type: 'unit.processed',
    station: context.picture.station.code,
    body: {
      unit: work.unit,
      result,
      ...(instantOf(work.startedAt) <= instantOf(context.now) && { startedAt: work.startedAt }),
      ...(used.length > 0 && { used }),
      ...(readings.length > 0 && { readings }),
      ...(result === 'fail' && defects.length > 0 && { defects }),
    },
  };
}
