import { z } from 'zod';

/** What a field that is no longer read has given way to, and how to write that. */
export interface Replacement {
  by: string;
  hint: string;
}

/** How the problem of such a field ends. */
export const NO_LONGER_READ = 'which is no longer read';

/** Fields of a file that were read once, by the file's schema: whoever still writes one is told what to write. */
export const REPLACED = z.registry<Record<string, Replacement>>();
