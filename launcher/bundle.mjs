// Packs the command line into one file, lets it do its main job once and keeps what V8 compiled for that. Called by
// `npm run build:core`.
import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = join(root, 'dist/cli');
const launcher = join(folder, 'seamwright.cjs');

/** What all files share. */
const shared = {
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  // what was written as modules is read as modules: older forms look for their parts when they run
  mainFields: ['module', 'main'],
  // read as Latin 1, which takes half the room
  charset: 'ascii',
  // all of it is read on every start; a failure is followed in the source (DEVELOPERS.md)
  minify: true,
  supported: { 'dynamic-import': false },
  // one is machine code of its own, the other something that paper does without where it is missing
  external: ['@resvg/resvg-js', 'jsdom', 'jsdom/*'],
  logLevel: 'warning',
};
// what is loaded only when it is used lies apart: more than half of all code, which dressing a drawing does without
const apart = {
  '@cantoo/pdf-lib': `export * from '@cantoo/pdf-lib'`,
  // of values only what is used: its files export some of the same names
  '@sinclair/typebox': `
    export * from '@sinclair/typebox';
    export * from '@sinclair/typebox/errors';
    export { Value } from '@sinclair/typebox/value';
  `,
  culori: `export * from 'culori'`,
  'fast-png': `export * from 'fast-png'`,
  'jpeg-js': `module.exports = require('jpeg-js')`,
  'jsonc-parser': `export * from 'jsonc-parser'`,
  papaparse: `module.exports = require('papaparse')`,
  paper: `module.exports = require('paper/dist/paper-core.js')`,
};
const fileOf = (name) => `./apart/${name.replace('@', '').replace('/', '-')}.cjs`;

for (const [name, contents] of Object.entries(apart)) {
  await build({ ...shared, stdin: { contents, resolveDir: root }, outfile: join(folder, fileOf(name)) });
}
await build({
  ...shared,
  entryPoints: [join(root, 'src/cli/main.ts')],
  outfile: join(folder, 'whole.cjs'),
  plugins: [
    {
      name: 'apart',
      setup({ onResolve }) {
        onResolve({ filter: new RegExp(`^(${Object.keys(apart).join('|')})(/|$)`) }, ({ path }) => {
          const name = Object.keys(apart).find((name) => path === name || path.startsWith(`${name}/`));
          return { path: fileOf(name), external: true };
        });
      },
    },
    {
      // to load it takes some ms, and no command here is a program of its own
      name: 'commander starts no other program until it does',
      setup({ onResolve, onLoad }) {
        onResolve({ filter: /^node:child_process$/ }, ({ path, importer }) =>
          importer.includes('/commander/') ? { path, namespace: 'late' } : undefined,
        );
        onLoad({ filter: /.*/, namespace: 'late' }, ({ path }) => ({
          contents: `exports.spawn = (...asked) => require('${path}').spawn(...asked);`,
        }));
      },
    },
  ],
  define: { 'import.meta.url': 'importMetaUrl' },
  // a function of what Node gives to a module, as it stands, so that it need not be put together on every start
  banner: {
    js: "(function (exports, require, module, __filename, __dirname) { const importMetaUrl = require('node:url').pathToFileURL(__filename).href;",
  },
  footer: { js: '})' },
});
copyFileSync(join(root, 'launcher/seamwright.cjs'), launcher);
chmodSync(launcher, 0o755);

// V8 tells what was compiled of another text by its length alone
for (const name of readdirSync(folder)) if (name.endsWith('.compiled')) rmSync(join(folder, name));
const out = mkdtempSync(join(tmpdir(), 'seamwright-'));
const { status, stderr } = spawnSync(
  process.execPath,
  [
    launcher,
    'dress',
    join(root, 'gallery/demo/panel.svg'),
    '--out',
    join(out, 'panel.dst'),
    join(out, 'panel.svg'),
  ],
  { encoding: 'utf8', env: { ...process.env, SEAMWRIGHT_KEEP_COMPILED: '1' } },
);
rmSync(out, { recursive: true });
if (status !== 0) throw new Error(`the command line that was packed does not run: ${stderr}`);
