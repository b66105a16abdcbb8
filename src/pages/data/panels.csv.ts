import type { APIRoute } from 'astro';
import { panelsCsv } from '../../present/data-files.ts';
import { siteLedger } from '../../present/site-ledger.ts';

export const GET: APIRoute = () =>
  new Response(panelsCsv(siteLedger().ledger), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
