/** What a tester has chosen on this device; nothing of it goes into a file. */
const KEY = 'panel-ledger-pad';

function kept(): Record<string, unknown> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof found === 'object' && found !== null ? { ...found } : {};
  } catch {
    // Storage is closed, or holds something odd.
    return {};
  }
}

/** A choice by its name: `dark`, `unit.irradiance`, `at.<run>`. */
export function choice(name: string): string | undefined {
  const found = kept()[name];
  return typeof found === 'string' ? found : undefined;
}

/** Keeps a choice; without a value forgets it. */
export function choose(name: string, value: string | undefined): void {
  const { [name]: _, ...rest } = kept();
  try {
    localStorage.setItem(KEY, JSON.stringify(value === undefined ? rest : { ...rest, [name]: value }));
  } catch {
    // Storage is closed: the choice holds for this page.
  }
}
