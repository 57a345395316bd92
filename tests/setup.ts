import fc from 'fast-check';

// The same cases on every run, so that a red test is red for everybody; SEED=n looks at others.
fc.configureGlobal({ seed: Number(process.env.SEED ?? 1) });
