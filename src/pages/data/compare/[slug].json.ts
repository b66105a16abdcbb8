import type { APIRoute } from 'astro';
import type { PanelEntry } from '../../../ledger/ledger.ts';
import { comparedPanel } from '../../../present/compare-data.ts';
import { siteLedger } from '../../../present/site-ledger.ts';

export function getStaticPaths() {
  return [...siteLedger().ledger.panels.values()].map((panel) => ({ params: { slug: panel.slug }, props: { panel } }));
}

export const GET: APIRoute<{ panel: PanelEntry }> = ({ props }) =>
  new Response(JSON.stringify(comparedPanel(props.panel, siteLedger().ledger)), {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
