import { defineConfig } from 'prisma/config';

/** For `prisma generate`; migrations are applied by lib/data/migrate.ts, which needs no download. */
export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
});
