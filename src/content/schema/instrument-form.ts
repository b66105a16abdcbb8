/** The two ways to write an instrument's file: one quantity at its top, or a block for each of several. */
import type { z } from 'zod';
import { isBlock, ownField } from './block.ts';
import { refuse } from './fields.ts';
import { INSTRUMENT_KINDS, INSTRUMENT_QUANTITY, type InstrumentKind, KIND_FIELDS } from './instrument-kinds.ts';
import { unitTextPattern } from './quantity-pattern.ts';

/** What is needed of one quantity, with the kind of value it is. */
const NEEDED = {
  unit: 'string',
  range: 'object',
  response: 'string',
  resolution: 'number',
  calibrations: 'array',
} as const;

/** Those that may stand beside the blocks and hold for all of them. */
const SHARED = ['response', 'calibrations'] as const;

/** What a block says, and its file not. */
const OF_ONE = ['measures', 'unit', 'range', 'resolution', 'repeatability', ...Object.keys(KIND_FIELDS)];

/** Reports what is missing or in the wrong place in either way. */
export function reportForm(data: unknown, context: z.RefinementCtx): void {
  if (!isBlock(data)) return;
  const missing = (path: PropertyKey[], expected: (typeof NEEDED)[keyof typeof NEEDED]) =>
    context.addIssue({ code: 'invalid_type', expected, path, input: undefined });
  const blocks = ownField(data, 'quantities');
  if (blocks === undefined) {
    if (ownField(data, 'measures') === undefined) {
      context.addIssue({ code: 'invalid_value', values: [...INSTRUMENT_KINDS], path: ['measures'], input: undefined });
    }
    for (const [name, expected] of Object.entries(NEEDED)) {
      if (ownField(data, name) === undefined) missing([name], expected);
    }
    return;
  }
  for (const name of OF_ONE) {
    if (ownField(data, name) === undefined) continue;
    const wanted = 'no such field beside quantities: it belongs into the block of one of them';
    refuse(context, { wanted }, [name]);
  }
  for (const [kind, block] of Object.entries(isBlock(blocks) ? blocks : {})) {
    for (const name of SHARED) {
      const isThere = [block, data].some((it) => isBlock(it) && ownField(it, name) !== undefined);
      if (isBlock(block) && !isThere) missing(['quantities', kind, name], NEEDED[name]);
    }
  }
}

/** The same, as JSON Schema says it to editors, and what only some kinds of instruments can state. */
export function instrumentKeywords(): Record<string, unknown> {
  const never = (names: readonly string[]) => ({ properties: Object.fromEntries(names.map((it) => [it, false])) });
  const isKind = (kind: InstrumentKind) => ({ properties: { measures: { const: kind } }, required: ['measures'] });
  const where = (test: object, then: object) => ({ if: test, then });
  return {
    ...where({ required: ['quantities'] }, never(OF_ONE)),
    else: { required: ['measures', ...Object.keys(NEEDED)] },
    allOf: [
      ...INSTRUMENT_KINDS.map((kind) =>
        where(isKind(kind), { properties: { unit: { pattern: unitTextPattern(INSTRUMENT_QUANTITY[kind]) } } }),
      ),
      ...Object.entries(KIND_FIELDS).map(([name, only]) =>
        where({ properties: { measures: { not: { const: only } } }, required: ['measures'] }, never([name])),
      ),
      where(isKind('sound'), { properties: { repeatability: { const: 0 }, calibrations: WITHOUT_SHARE } }),
      where(
        { required: ['quantities'] },
        { properties: { quantities: { properties: { sound: { properties: { calibrations: WITHOUT_SHARE } } } } } },
      ),
      ...SHARED.map((name) =>
        where(
          { required: ['quantities'], not: { required: [name] } },
          { properties: { quantities: { additionalProperties: { required: [name] } } } },
        ),
      ),
    ],
  };
}

/** A level in decibels has no share of the reading. */
const WITHOUT_SHARE = { items: { properties: { relative: { const: 0 } } } };
