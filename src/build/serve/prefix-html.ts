import { Tokenizer } from 'htmlparser2';

/** Attributes whose value is one address. */
const ONE = new Set(['href', 'src', 'action', 'formaction', 'poster', 'data', 'xlink:href', 'cite', 'background']);
/** Attributes that list addresses, each with a width, between commas. */
const MANY = new Set(['srcset', 'imagesrcset']);
/** A page's refresh, `0; url=/panels/plover/`: where its address begins. */
const REFRESH = /^\s*\d+\s*;\s*url\s*=\s*['"]?(?=\/)/i;

/**
 * Puts the path of the guide on its host before each address of a page that begins at the guide's top. Nothing else is
 * touched, texts and data blocks least of all: the tokenizer tells what is an attribute.
 *
 * @param base with a slash at both ends: `/some/path/`
 * @param ready what addresses begin with that have the path already, since the bundler wrote them
 */
export function prefixHtml(html: string, base: string, ready: readonly string[] = []): string {
  const prefix = base.slice(0, -1);
  /** Where the path has to be put in, from the start. */
  const places: number[] = [];
  let tag = '';
  let name = '';
  /** Where the value begins; entities stand within it as they are written. */
  let start: number | undefined;
  const tokenizer = new Tokenizer(
    { decodeEntities: false },
    {
      onopentagname: (from, to) => {
        tag = html.slice(from, to).toLowerCase();
      },
      onattribname: (from, to) => {
        name = html.slice(from, to).toLowerCase();
        start = undefined;
      },
      onattribdata: (from) => {
        start ??= from;
      },
      onattribend: (_quote, to) => {
        if (start === undefined) return;
        for (const at of addressesIn(html.slice(start, to), tag, name)) {
          const rest = html.slice(start + at, to);
          const isOurs = rest.startsWith('/') && !rest.startsWith('//') && !ready.some((it) => rest.startsWith(it));
          if (isOurs) places.push(start + at);
        }
      },
      onattribentity: ignore,
      oncdata: ignore,
      onclosetag: ignore,
      oncomment: ignore,
      ondeclaration: ignore,
      onend: ignore,
      onopentagend: ignore,
      onprocessinginstruction: ignore,
      onselfclosingtag: ignore,
      ontext: ignore,
      ontextentity: ignore,
    },
  );
  tokenizer.write(html);
  tokenizer.end();
  let text = '';
  let done = 0;
  for (const place of places) {
    text += html.slice(done, place) + prefix;
    done = place;
  }
  return text + html.slice(done);
}

const ignore = () => {};

/** Where addresses begin in a value. */
function addressesIn(value: string, tag: string, name: string): number[] {
  const lead = value.length - value.trimStart().length;
  if (ONE.has(name)) return [lead];
  if (MANY.has(name)) return [...value.matchAll(/(?:^|,)\s*/g)].map((it) => it.index + it[0].length);
  const refresh = tag === 'meta' && name === 'content' ? REFRESH.exec(value) : null;
  return refresh ? [refresh[0].length] : [];
}
