import type { Guide } from '../../content/schema/guide.ts';
import type { Method } from '../../measure/methods.ts';
import { SKETCH_OF, SKETCHES } from '../methods/sketches/index.ts';
import { captionOf, type Sketch } from '../methods/sketches/sketch.ts';
import { siteAddress } from '../shared/site-address.ts';
import { METHOD_SENTENCES } from './method-sentences.ts';

/** What stands on a method's card: its sketch, which explains it in one picture. */
export interface MethodCardView {
  name: string;
  version: string;
  /** What it does, in a sentence. */
  says: string;
  sketch: Sketch;
  /** What the sketch shows, in words: on cards that have the room. */
  words: string;
  guide: string;
  /** What the code leads to, in full. */
  address: string;
}

/** A method's card. */
export function methodCardView(
  { id, name, version }: Pick<Method, 'id' | 'name' | 'version'>,
  guide: Pick<Guide, 'title' | 'site'>,
): MethodCardView {
  const sketch: Sketch = SKETCHES[SKETCH_OF[id]];
  return {
    name,
    version: `Version ${version}`,
    says: METHOD_SENTENCES[id],
    sketch,
    words: captionOf(sketch),
    guide: guide.title,
    address: siteAddress(`/methods/${id}/`, guide.site),
  };
}
