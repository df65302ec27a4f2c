import { findOpenHolds } from '@/lib/data/holds/find-open-holds';
import type { OpenHoldList } from '@/lib/domain/holds/open-hold-list';
import { database } from '@/lib/server/database';

const HOLDS_MAX = 500;

/** The holds that nobody has released yet, oldest first. */
export function listOpenHolds(): Promise<OpenHoldList> {
  return findOpenHolds(database().pool, HOLDS_MAX);
}
