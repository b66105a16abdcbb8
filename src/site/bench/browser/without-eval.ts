/**
 * Has schemas work without code that is made while they run, which the pages' content security policy forbids. A script
 * that reads content imports this before anything else.
 */
import { config } from 'zod';

config({ jitless: true });
