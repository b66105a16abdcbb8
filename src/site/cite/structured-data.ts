import type { Dataset, Product, WithContext } from 'schema-dts';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { metricById, metricsOnPanelPage } from '../../measure/metrics.ts';
import { panelPreview } from '../cards/preview.ts';
import { dataUnit, figureNumbers, publishedPanels } from '../export/data-parts.ts';
import { TABLES, tablePath } from '../export/tables/index.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { photoPictures } from '../shared/photo-files.ts';
import { siteAddress } from '../shared/site-address.ts';

/* What pages say of themselves in the words of schema.org, for programs that read pages. The types are its own. */

const CONTEXT = 'https://schema.org';

/**
 * A panel as a product with the tester's review and the price that was last seen. The review has no rating, since the
 * guide gives none; the key figures stand as properties with the ends of their 95 % intervals.
 */
export function panelData(panel: PanelEntry, { guide }: Ledger): WithContext<Product> {
  const at = (path: string) => siteAddress(path, guide.site);
  const address = at(panelAddress(panel.slug));
  const publisher = { '@type': 'Organization', name: guide.publisher, url: guide.site } as const;
  const [photo] = panel.photos;
  const image = photo ? photoPictures(panel.slug, photo).fallback.address : panelPreview(panel, { guide })?.address;
  const [newest] = panel.prices;
  return {
    '@context': CONTEXT,
    '@type': 'Product',
    name: panel.name,
    model: panel.data.model,
    brand: { '@type': 'Brand', name: panel.maker.name },
    category: 'Red and near-infrared light panel',
    url: address,
    ...(image && { image: at(image) }),
    ...(panel.current && {
      review: {
        '@type': 'Review',
        author: publisher,
        datePublished: panel.current.date,
        ...(panel.data.verdict && { reviewBody: panel.data.verdict }),
      },
      additionalProperty: keyFigures(panel).map((it) => {
        const { value, interval95 } = figureNumbers(it);
        return {
          '@type': 'PropertyValue',
          name: metricById(it.metric).name,
          value,
          ...(interval95 && { minValue: interval95[0], maxValue: interval95[1] }),
          unitText: dataUnit(it.unit, guide.currency),
        };
      }),
      // How each was found, with its method and version, is said there for all of them.
      subjectOf: { '@type': 'WebPage', url: `${address}methodology/` },
    }),
    ...(newest && {
      offers: {
        '@type': 'Offer',
        price: newest.price.paid ?? newest.price.list ?? newest.figure.value,
        priceCurrency: newest.price.currency,
        validFrom: newest.price.date,
        ...(newest.price.link && { url: newest.price.link }),
      },
    }),
  };
}

/** Figures of the first lines that stand without a bound or a doubt: a program would take either for the value. */
function keyFigures(panel: PanelEntry): Figure[] {
  return metricsOnPanelPage('key').flatMap((metric) => {
    const it = panel.figures.get(metric);
    return isFigure(it) && !it.bound && !isInDoubt(it) ? [it] : [];
  });
}

/** The guide's figures and readings as one dataset, with every file that they can be had in. */
export function guideDataset(ledger: Ledger): WithContext<Dataset> {
  const { guide, today } = ledger;
  const at = (path: string) => siteAddress(path, guide.site);
  const publisher = { '@type': 'Organization', name: guide.publisher, url: guide.site } as const;
  const days = publishedPanels(ledger).flatMap((it) => it.sessions.map(({ date }) => date));
  const [first, last] = [days.toSorted()[0], days.toSorted().at(-1)];
  const download = (path: string, name: string, encodingFormat: string) =>
    ({ '@type': 'DataDownload', name, encodingFormat, contentUrl: at(`/data/${path}`) }) as const;
  return {
    '@context': CONTEXT,
    '@type': 'Dataset',
    name: guide.title,
    description: `${guide.tagline}. Every figure with its 95 % interval, every raw reading, every price. ${guide.about}`,
    url: at('/data/'),
    creator: publisher,
    publisher,
    version: today,
    ...(guide.licence && { license: guide.licence.link }),
    ...(first && last && { temporalCoverage: `${first}/${last}` }),
    isAccessibleForFree: true,
    measurementTechnique: at('/methods/'),
    distribution: [
      download('datapackage.json', 'Data package (Frictionless)', 'application/json'),
      download('panels.json', 'All figures and readings', 'application/json'),
      ...TABLES.map((it) => download(tablePath(it), it.title, 'text/csv')),
    ],
  };
}
