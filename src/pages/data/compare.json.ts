import type { APIRoute } from 'astro';
import { listedPanels } from '../../present/compare-data.ts';
import { siteLedger } from '../../present/site-ledger.ts';

export const GET: APIRoute = () =>
  new Response(JSON.stringify(listedPanels(siteLedger().ledger)), {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
