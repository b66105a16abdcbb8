import { countedEmitter } from '../../measure/beam/assumed-emitter.ts';
import { placeLeds } from '../../measure/beam/emitter.ts';
import { countedLeds } from '../read/counted-leds.ts';
import { fields, problemAt } from '../read/fields.ts';
import { panelSchema } from '../schema/panel.ts';
import type { Rule } from './rule.ts';

/** LEDs have to fit the field that they lie in, and each wavelength group needs one at least. */
export const ledsFit: Rule = {
  id: 'leds-fit',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      const [counted] = fields(panel.data, ['leds']);
      const leds = panelSchema.shape.leds.safeParse(counted?.value);
      const field = panelSchema.shape.field.safeParse(fields(panel.data, ['field'])[0]?.value);
      if (!counted || !leds.data || !field.data) return [];
      const sides = { width: field.data.width.value, height: field.data.height.value };
      try {
        const { emitter } = countedEmitter(sides, countedLeds(leds.data));
        if (emitter.kind === 'leds') placeLeds(emitter, sides);
        return [];
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        return [{ ...problemAt(panel, counted, 'LEDs that fit the LED field'), found: error.message }];
      }
    }),
};
