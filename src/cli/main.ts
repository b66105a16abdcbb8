#!/usr/bin/env node
import { Command } from 'commander';
import { buildCommand } from './build.ts';
import { checkCommand } from './check.ts';

const program = new Command('panel-ledger').description('The tester’s commands of Panel Ledger.');
program.addCommand(checkCommand()).addCommand(buildCommand());
await program.parseAsync();
