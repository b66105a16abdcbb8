import { number } from '../../measure/numbers.ts';
import { fields, problemAt } from '../read/fields.ts';
import { panelSchema } from '../schema/panel.ts';
import type { Rule } from './rule.ts';

/** Emitters cover no more than the LED field that they lie in: else a lens was typed for what looks lit, or a unit slipped. */
export const emittersFit: Rule = {
  id: 'emitters-fit',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      const [typed] = fields(panel.data, ['emitters']);
      const emitters = panelSchema.shape.emitters.safeParse(typed?.value).data;
      const field = panelSchema.shape.field.safeParse(fields(panel.data, ['field'])[0]?.value).data;
      if (!typed || !emitters || !field) return [];
      const covered = emitters.count * (Math.PI / 4) * emitters.diameter.value ** 2;
      const area = field.width.value * field.height.value;
      if (covered <= area) return [];
      return [
        {
          ...problemAt(panel, typed, 'emitters that fit the LED field'),
          found: `${emitters.count} emitters of ${emitters.diameter.written}, ${number(covered)} cm² in a field of ${number(area)} cm²`,
          hint: 'diameter is what looks lit, as 3 mm; a bare number is in cm',
        },
      ];
    }),
};
