import { randomBytes } from 'node:crypto';
import type { TestProject } from 'vitest/node';
import type { ReelkinServer } from './provided-context';
import { startTestServer } from './start-test-server';
import { makeTemporaryFolder } from './temporary-folder';
import { addTestPeople } from './test-people';

type LaneServer = ReelkinServer & { close: () => Promise<void> };

/** Global setup of the browser tests: a server for each file that runs at the same time, which then has it alone. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const servers = await Promise.all(Array.from({ length: project.config.maxWorkers }, openServer));
  project.provide(
    'reelkinServers',
    servers.map(({ origin, apiToken }) => ({ origin, apiToken })),
  );
  return async () => {
    await Promise.all(servers.map(({ close }) => close()));
  };
}

/** The production server with an API token, one person a role and no plant else. */
async function openServer(): Promise<LaneServer> {
  const folder = makeTemporaryFolder();
  const apiToken = randomBytes(16).toString('hex');
  const server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: apiToken });
  await addTestPeople({ origin: server.origin, apiToken, dataFolder: folder.path });
  return {
    origin: server.origin,
    apiToken,
    async close() {
      await server.stop();
      folder.remove();
    },
  };
}
