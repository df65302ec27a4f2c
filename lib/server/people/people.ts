import { openPeopleDb, type PeopleDb } from '@/lib/data/people/people-db';

// One client for the process, whichever bundle asks first.
declare global {
  var reelkinPeople: PeopleDb | undefined;
}

/** The people's tables, opened on first use; reads DATABASE_URL. */
export function people(): PeopleDb {
  globalThis.reelkinPeople ??= open();
  return globalThis.reelkinPeople;
}

function open(): PeopleDb {
  const url = process.env.DATABASE_URL;
  if (url === undefined || url === '')
    throw new Error('DATABASE_URL is not set: start the server with npm start.');
  return openPeopleDb(url);
}
