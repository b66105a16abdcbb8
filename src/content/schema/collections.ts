import type { z } from 'zod';
import { cautionsSchema } from './cautions.ts';
import { correctionsSchema } from './corrections.ts';
import { guideSchema } from './guide.ts';
import { instrumentSchema } from './instrument.ts';
import { makerSchema } from './maker.ts';
import { methodSchema } from './method.ts';
import { panelSchema } from './panel.ts';
import { standardSchema } from './standard.ts';

/**
 * Where each kind of content lies and what it must look like. The checker and Astro's collections both read
 * this table, so that they cannot disagree.
 */
export const COLLECTIONS = {
  guide: { pattern: 'guide.yaml', schema: guideSchema },
  instruments: { pattern: 'instruments/*.yaml', schema: instrumentSchema },
  standards: { pattern: 'standards/*.yaml', schema: standardSchema },
  makers: { pattern: 'makers/*.yaml', schema: makerSchema },
  panels: { pattern: 'panels/*/index.{md,mdx}', schema: panelSchema },
  methods: { pattern: 'methods/*.mdx', schema: methodSchema },
  corrections: { pattern: 'corrections.yaml', schema: correctionsSchema },
  cautions: { pattern: 'cautions.mdx', schema: cautionsSchema },
} as const satisfies Record<string, { pattern: string; schema: z.ZodType }>;

export type CollectionName = keyof typeof COLLECTIONS;

/** The name of an entry: the panel's folder, or the file's name without its ending. */
export function entryId(path: string): string {
  const parts = path.split('/');
  const name = (parts.at(-1) ?? '').replace(/\.[^.]+$/, '');
  return name === 'index' ? (parts.at(-2) ?? name) : name;
}
