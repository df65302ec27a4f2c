/** How tests reach the PostgreSQL server that their run has started or was given. */
export type DatabaseServer = {
  /** Connects as a user who may create databases, to a database that is none of ours. */
  ownerUrl: string;
  /** A migrated database to copy. */
  template: string;
  /** A login that has the application's role and nothing else. */
  appUser: string;
  appPassword: string;
};

declare module 'vitest' {
  export interface ProvidedContext {
    databaseServer: DatabaseServer;
  }
}
