/** Names that addresses had before: a link that names a panel or a maker by one of them means it still. No DOM. */

/** Something that addresses name, as lists of it go to a page's script. */
export interface Named {
  slug: string;
  /** Names that it had before; left out where there are none. */
  formerly?: readonly string[];
}

/** Finds the name of today for a name that an address holds: itself, or one of before; undefined for any other. */
export function nameToday(all: readonly Named[]): (name: string) => string | undefined {
  const today = new Map(all.flatMap(({ slug, formerly = [] }) => formerly.map((it) => [it, slug] as const)));
  // The name that somebody has now wins over one of before.
  for (const { slug } of all) today.set(slug, slug);
  return (name) => today.get(name);
}
