#!/usr/bin/env node
import { keepCompiled } from '../build/compile-cache.ts';

keepCompiled();
// Loaded only now: what is compiled before that is not kept.
const [{ UsageError }, { PROBLEM_CODE }, { ledgerProgram }] = await Promise.all([
  import('../content/read/usage-error.ts'),
  import('./exit-codes.ts'),
  import('./program.ts'),
]);

try {
  const program = await ledgerProgram(process.argv[2]);
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof UsageError)) throw error;
  console.error(error.message);
  process.exitCode = PROBLEM_CODE;
}
