// Packs the command line into one file, lets it do its main job once and keeps what V8 compiled for that. Called by
// `npm run build:core`.
import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = join(root, 'dist/cli');
const launcher = join(folder, 'seamwright.cjs');

/** What both files share. */
const shared = {
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  // what was written as modules is read as modules: older forms look for their parts when they run
  mainFields: ['module', 'main'],
  // read as Latin 1, which takes half the room
  charset: 'ascii',
  // all of it is read on every start; names stay, for whoever follows a failure
  minifyWhitespace: true,
  supported: { 'dynamic-import': false },
  logLevel: 'warning',
};
// a quarter of all code, of use to printed sheets alone
await build({
  ...shared,
  entryPoints: ['@cantoo/pdf-lib'],
  absWorkingDir: root,
  outfile: join(folder, 'pdf.cjs'),
});
await build({
  ...shared,
  entryPoints: [join(root, 'src/cli/main.ts')],
  outfile: join(folder, 'whole.cjs'),
  alias: { '@cantoo/pdf-lib': './pdf.cjs' },
  // beside that file, one is machine code of its own, the other something that paper does without where it is missing
  external: ['./pdf.cjs', '@resvg/resvg-js', 'jsdom', 'jsdom/*'],
  define: { 'import.meta.url': 'importMetaUrl' },
  // a function of what Node gives to a module, as it stands, so that it need not be put together on every start
  banner: {
    js: "(function (exports, require, module, __filename, __dirname) { const importMetaUrl = require('node:url').pathToFileURL(__filename).href;",
  },
  footer: { js: '})' },
});
copyFileSync(join(root, 'launcher/seamwright.cjs'), launcher);
chmodSync(launcher, 0o755);

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
