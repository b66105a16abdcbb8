import type { Figure, Flag } from './figure.ts';
import { isSameStatement } from './statement.ts';

/**
 * The flags that a figure takes over from those it is made of: a doubt about them is one about it, and what can't be
 * right makes nothing that can. Each says which figure it was raised on. Notes stay where they are.
 */
export function handedOn(inputs: Iterable<Pick<Figure, 'metric' | 'flags'>>): Flag[] {
  const flags: Flag[] = [];
  for (const { metric, flags: own } of inputs) {
    for (const flag of own) if (flag.severity !== 'note') addFlag(flags, { ...flag, from: flag.from ?? metric });
  }
  return flags;
}

/** Adds a flag to a list that has it not yet, from whichever figure; true where it was added. */
export function addFlag(flags: Flag[], flag: Flag): boolean {
  if (flags.some((it) => it.check === flag.check && isSameStatement(it.finding, flag.finding))) return false;
  flags.push(flag);
  return true;
}

/** The flag by which a figure can't be right as it stands; undefined where there is none. */
export function impossibility({ flags }: Pick<Figure, 'flags'>): Flag | undefined {
  return flags.find((it) => it.severity === 'impossible');
}

/** True where something about a figure is in doubt, or can't be right. */
export function isInDoubt({ flags }: Pick<Figure, 'flags'>): boolean {
  return flags.some((it) => it.severity !== 'note');
}
