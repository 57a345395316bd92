import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { isPacked } from './run-cli.js';

const launcher = fileURLToPath(new URL('../../dist/cli/seamwright.cjs', import.meta.url));

it.runIf(isPacked)('what V8 compiled when the command line was built is taken', () => {
  const { stdout, stderr } = spawnSync(process.execPath, [launcher, '--version'], {
    encoding: 'utf8',
    env: { ...process.env, SEAMWRIGHT_TRACE: '1', NODE_OPTIONS: '' },
  });
  expect(stderr).toBe('');
  expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});
