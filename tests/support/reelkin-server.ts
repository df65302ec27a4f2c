import { randomBytes } from 'node:crypto';
import type { TestProject } from 'vitest/node';
import './provided-context';
import { startTestServer } from './start-test-server';
import { makeTemporaryFolder } from './temporary-folder';
import { addTestPeople } from './test-people';

/** Global setup of the browser tests: the production server with an API token, one person a role and no plant else. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = makeTemporaryFolder();
  const apiToken = randomBytes(16).toString('hex');
  const server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: apiToken });
  await addTestPeople({ origin: server.origin, apiToken, dataFolder: folder.path });
  project.provide('reelkinServer', { origin: server.origin, apiToken, setupLink: server.setupLink });
  return async () => {
    await server.stop();
    folder.remove();
  };
}
