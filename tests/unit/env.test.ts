import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readEnv } from '@/lib/server/env';

describe('the settings of a server', () => {
  it('have defaults for everything, and count an empty variable as not set', () => {
    const defaults = {
      host: '127.0.0.1',
      port: 3000,
      dataFolder: resolve('.reelkin'),
      demo: false,
      apiToken: null,
      databaseUrl: null,
    };
    expect(readEnv({})).toMatchObject({ ok: true, env: defaults });
    expect(readEnv({ HOST: '', PORT: ' ', REELKIN_API_TOKEN: '', DATABASE_URL: '' })).toMatchObject({
      ok: true,
      env: defaults,
    });
  });

  it('keep the demo apart from the plant, unless the folder is named', () => {
    expect(readEnv({ REELKIN_DEMO: '1' })).toMatchObject({ env: { dataFolder: resolve('.reelkin/demo') } });
    expect(readEnv({ REELKIN_DEMO: '1', REELKIN_DATA: '/srv/x' })).toMatchObject({
      env: { dataFolder: '/srv/x' },
    });
  });

  it.each([
    ['PORT', 'abc'],
    ['PORT', '65536'],
    ['PORT', '-1'],
    ['PORT', '3000.5'],
    ['REELKIN_DEMO', 'yes'],
    ['DATABASE_URL', 'mysql://here/x'],
    ['DATABASE_URL', 'postgresql://u:p@a:b:c/x'],
    ['DATABASE_URL', 'postgresql://u@h/x?options=-c%20role%3Downer'],
  ])('refuse %s=%s and name the variable', (name, value) => {
    const result = readEnv({ [name]: value });
    expect(result.ok).toBe(false);
    expect(result.ok ? [] : result.problems).toEqual([expect.stringMatching(new RegExp(`^${name} `))]);
  });

  it.each([
    'postgresql://u:p@h:5432/x',
    'postgres://u@h/x?sslmode=require',
    'postgresql://u@/x?host=/var/run',
  ])('accept %s', (databaseUrl) => {
    expect(readEnv({ DATABASE_URL: databaseUrl })).toMatchObject({ ok: true, env: { databaseUrl } });
  });
});
