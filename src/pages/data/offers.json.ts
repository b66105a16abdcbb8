import type { APIRoute } from 'astro';
import { offersJson } from '../../present/offers-data.ts';
import { siteLedger } from '../../present/site-ledger.ts';

export const GET: APIRoute = () =>
  new Response(offersJson(siteLedger().ledger), { headers: { 'content-type': 'application/json; charset=utf-8' } });
