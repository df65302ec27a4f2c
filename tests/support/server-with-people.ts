import { randomBytes } from 'node:crypto';
import { afterAll } from 'vitest';
import { startTestServer } from './start-test-server';
import { makeTemporaryFolder } from './temporary-folder';
import { addTestPeople } from './test-people';

/** A production server of this file's own, with an API token, one person a role and no plant else. */
export async function serverWithPeople(): Promise<{ origin: string; apiToken: string }> {
  const folder = makeTemporaryFolder();
  const apiToken = randomBytes(16).toString('hex');
  const server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: apiToken });
  afterAll(async () => {
    await server.stop();
    folder.remove();
  });
  await addTestPeople({ origin: server.origin, apiToken, dataFolder: folder.path });
  return { origin: server.origin, apiToken };
}
