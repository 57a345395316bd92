#!/usr/bin/env node
// Starts the command line: one file with all of it, and beside it what V8 made of that when it was built, so that nothing
// is looked for in folders and little is compiled. Without it all is compiled anew. Releases of one Node may differ in more than
// V8 looks at before it takes what another has made, and crash on it: each has its own.
const { readFileSync, writeFileSync } = require('node:fs');
const { createRequire } = require('node:module');
const { join } = require('node:path');
const { setFlagsFromString } = require('node:v8');
const { Script } = require('node:vm');

/** The build keeps what V8 compiles in this run. */
const keep = process.env.SEAMWRIGHT_KEEP_COMPILED === '1';

// Measured for the V8 of Node 20 alone. It makes code fast that has run but a little, and throws half of that away again: four
// times as much (132 KB of byte code is its own) saves a sixth of a short run, and long ones take no longer. Room for new objects
// that does not grow saves a tenth, for memory touched for the first time is dear; long work has it grow as usual.
if (process.versions.node.startsWith('20.')) {
  setFlagsFromString('--interrupt-budget=540000');
  setFlagsFromString('--semi-space-growth-factor=1');
  // terminal.ts tells of it; V8 turns down what it compiled under other flags
  if (!keep) process.once('long work', () => setFlagsFromString('--semi-space-growth-factor=2'));
}

const filename = join(__dirname, 'whole.cjs');
const compiled = join(__dirname, `whole-${process.version}-${process.platform}-${process.arch}.compiled`);
const script = new Script(readFileSync(filename, 'latin1'), {
  filename,
  cachedData: keep ? undefined : readIfThere(compiled),
});
if (script.cachedDataRejected && process.env.SEAMWRIGHT_TRACE) {
  process.stderr.write('V8 turned down what was compiled when this was built\n');
}
// what has run until then has been compiled until then
if (keep) process.on('exit', () => writeFileSync(compiled, script.createCachedData()));

function readIfThere(name) {
  try {
    return readFileSync(name);
  } catch {
    return undefined;
  }
}

const own = { exports: {} };
script.runInThisContext()(own.exports, createRequire(filename), own, filename, __dirname);
