import type { CountedLeds } from '../../measure/beam/assumed-emitter.ts';
import type { Panel } from '../schema/panel.ts';

/** A panel's LEDs as the model takes them. */
export function countedLeds({
  columns,
  rows,
  staggered,
  size,
  groups,
  pattern,
}: NonNullable<Panel['leds']>): CountedLeds {
  return {
    columns,
    rows,
    ...(staggered && { staggered }),
    ...(size && { ledSize: size.value }),
    ...(groups && { groups: groups.map(({ name, share }) => ({ name, share: share.value })), pattern }),
  };
}
