import { panelAddress } from '../../shared/panel-address.ts';
import { harmless, publishedPanels } from '../data-parts.ts';
import { PANEL_FIELD, REQUIRED, type Table } from './table.ts';

/** A row a published panel: what it is, and what its maker claims of it. */
export const PANELS_TABLE: Table<'panels'> = {
  name: 'panels',
  title: 'Panels',
  description: 'Every published panel: what it is, how it was obtained, and what its maker claims.',
  fields: [
    PANEL_FIELD,
    { name: 'address', type: 'string', description: 'Address of its page.', constraints: REQUIRED },
    { name: 'maker', type: 'string', description: 'Who makes it.', constraints: REQUIRED },
    { name: 'model', type: 'string', description: 'Model name.', constraints: REQUIRED },
    { name: 'size_class', type: 'string', description: 'Size class of the guide, by the LED area.' },
    { name: 'formerly', type: 'string', description: 'Parts of its old addresses, parted by blanks.' },
    {
      name: 'obtained',
      type: 'string',
      description: 'How the tested piece was obtained.',
      constraints: { enum: ['bought', 'lent', 'given'] },
    },
    { name: 'paid_by', type: 'string', description: 'By whose money.' },
    {
      name: 'field_width',
      type: 'number',
      unit: 'cm',
      description: 'Width of the LED field, outer edge to outer edge.',
    },
    { name: 'field_height', type: 'number', unit: 'cm', description: 'Height of the LED field, in the same way.' },
    { name: 'weight', type: 'number', unit: 'kg', description: 'Weight without stand.' },
    { name: 'claimed_irradiance', type: 'number', unit: 'mW/cm²', description: 'Irradiance that the maker claims.' },
    { name: 'claimed_distance', type: 'number', unit: 'cm', description: 'Distance that it is claimed for.' },
    { name: 'claimed_draw', type: 'number', unit: 'W', description: 'Mains draw that the maker claims.' },
    { name: 'claimed_beam_angle', type: 'number', unit: '°', description: 'Beam angle as printed.' },
    { name: 'claimed_leds', type: 'integer', description: 'Number of LEDs that the maker claims.' },
    { name: 'claimed_wavelengths', type: 'string', description: 'Claimed peaks in nm, parted by blanks.' },
  ],
  primaryKey: ['panel'],
  foreignKeys: [],
  *rows(ledger) {
    const site = ledger.guide.site.replace(/\/$/, '');
    for (const { slug, maker, data, sizeClass } of publishedPanels(ledger)) {
      const { field, weight, claims, obtained } = data;
      yield [
        slug,
        `${site}${panelAddress(slug)}`,
        harmless(maker.name),
        harmless(data.model),
        sizeClass?.id ?? null,
        data.formerly?.join(' ') ?? null,
        obtained?.how ?? null,
        obtained ? harmless(obtained.paidBy) : null,
        field?.width.value ?? null,
        field?.height.value ?? null,
        weight?.value ?? null,
        claims?.irradiance?.value.value ?? null,
        claims?.irradiance?.distance?.value ?? null,
        claims?.power?.value ?? null,
        claims?.beamAngle?.value ?? null,
        claims?.ledCount ?? null,
        claims?.wavelengths?.map(({ peak }) => peak.value).join(' ') ?? null,
      ];
    }
  },
};
