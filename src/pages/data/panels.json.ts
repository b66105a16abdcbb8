import type { APIRoute } from 'astro';
import { panelsJson } from '../../present/data-files.ts';
import { siteLedger } from '../../present/site-ledger.ts';

export const GET: APIRoute = () =>
  new Response(panelsJson(siteLedger().ledger), { headers: { 'content-type': 'application/json; charset=utf-8' } });
