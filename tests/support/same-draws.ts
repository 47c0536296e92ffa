import fc from 'fast-check';

/**
 * The cases that tests of properties draw are the same in every run: a change is judged by what it changed, not by luck.
 * `DRAWS=7 npm test -- --project libraries` draws others, to look for what none of these has found.
 */
fc.configureGlobal({ seed: Number(process.env['DRAWS'] ?? 20_265) });
