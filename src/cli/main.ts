#!/usr/bin/env node
import { UsageError } from '../content/read/usage-error.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { ledgerProgram } from './program.ts';

try {
  await ledgerProgram().parseAsync();
} catch (error) {
  if (!(error instanceof UsageError)) throw error;
  console.error(error.message);
  process.exitCode = PROBLEM_CODE;
}
