import { hash } from 'node:crypto';
import type { Ledger, PanelEntry } from '../ledger/ledger.ts';
import { contentFolder, type Loaded } from '../ledger/load-ledger.ts';
import { stampsOf } from '../ledger/panel-stamps.ts';
import { givenTo, type PageReads } from '../site/shared/page-reads.ts';

/** What something that is kept has read of the ledger, in lists. */
export interface KeptReads {
  panels: string[];
  standings: string[];
  all: boolean;
  given: string[];
}

/** Names of what is kept from one build to the next. */
export interface KeptNames {
  /**
   * A name that follows from all that something rests on, but for the code, by which lists of names are kept; undefined
   * where something of it is no more.
   *
   * @param what tells it from all else that is kept, and what it is made with besides the ledger
   * @param panel whose it is, which is given what is made of all panels
   */
  nameOf(what: string, panel: string | undefined, reads: KeptReads): string | undefined;
}

/** Reads as lists. @param own the panel whose it is, which was given to what made it and not asked for */
export function readsOf({ panels, standings, all, given }: PageReads, own: string | undefined): KeptReads {
  const inOrder = (them: Iterable<string>) => [...them].toSorted();
  return {
    panels: inOrder(new Set(own === undefined ? panels : [...panels, own])),
    standings: inOrder(standings),
    all,
    given: inOrder(given),
  };
}

/** Names under a ledger as it has been loaded. */
export function keptNames(loaded: Loaded): KeptNames {
  const { ledger } = loaded;
  const stamps = stampsOf(loaded, contentFolder());
  const stampOfAll = digest(PARTS.map((part) => [...stamps[part]].join('\n')).join('\n'));
  /** What stands for what a panel's pages are given that is made of all panels; it is the same for all of them. */
  const marks = new Map<string, string>();

  function markOf(panel: PanelEntry, name: string): string | undefined {
    const key = `${name}\n${panel.slug}`;
    const known = marks.get(key);
    if (known !== undefined) return known;
    const given = givenText(panel, ledger, name);
    if (given === undefined) return undefined;
    const mark = digest(given);
    marks.set(key, mark);
    return mark;
  }

  return {
    nameOf(what, slug, reads) {
      const panel = slug === undefined ? undefined : ledger.panels.get(slug);
      const text = [stamps.shared, what];
      if (reads.all) text.push(stampOfAll);
      else for (const part of PARTS) for (const it of reads[part]) text.push(`${part} ${it} ${stamps[part].get(it)}`);
      for (const name of reads.given) {
        const mark = panel && markOf(panel, name);
        if (mark === undefined) return undefined;
        text.push(`${name} ${mark}`);
      }
      return digest(text.join('\n'));
    },
  };
}

const PARTS = ['panels', 'standings'] as const;

const digest = (text: string) => hash('sha256', text, 'base64url');

function givenText(panel: PanelEntry, ledger: Ledger, name: string): string | undefined {
  const given = givenTo(panel, ledger, name);
  return given && (JSON.stringify(given.value) ?? '');
}
