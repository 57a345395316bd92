// Makes a fresh clone ready: installs when node_modules is missing or older than the lock file, builds when
// dist is missing or older than a source file. Needs nothing but Node and npm.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const age = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);
const run = (...args) => {
  const done = spawnSync('npm', args, { stdio: ['inherit', 2, 2], shell: process.platform === 'win32' });
  if (done.status !== 0) process.exit(done.status ?? 1);
};
const newest = (folder) =>
  Math.max(
    0,
    ...readdirSync(folder, { recursive: true }).map((name) => statSync(join(folder, name)).mtimeMs),
  );

if (age('node_modules/.package-lock.json') < age('package-lock.json')) run('ci', '--no-audit', '--no-fund');
const compiled = `dist/cli/whole-${process.version}-${process.platform}-${process.arch}.compiled`;
if (age(compiled) < Math.max(newest('src'), newest('launcher'), age('tsconfig.build.json')))
  run('run', '--silent', 'build:core');
