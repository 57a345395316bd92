import { defineConfig } from 'vite';
import { oneFile } from './one-file.js';
import { readyDemo } from './ready-demo.js';

/** The page as one file: script, workers, styles and the library of stitches are all inside it. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'iife', rolldownOptions: { output: { codeSplitting: false } } },
  build: {
    outDir: '../dist',
    emptyOutDir: false,
    target: 'es2022',
    modulePreload: false,
    cssCodeSplit: false,
    reportCompressedSize: false,
    rolldownOptions: { output: { codeSplitting: false } },
  },
  plugins: [readyDemo(), oneFile()],
});
