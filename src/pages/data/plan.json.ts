import type { APIRoute } from 'astro';
import { planJson } from '../../present/plan-data.ts';
import { siteLedger } from '../../present/site-ledger.ts';

export const GET: APIRoute = () =>
  new Response(planJson(siteLedger().ledger), { headers: { 'content-type': 'application/json; charset=utf-8' } });
