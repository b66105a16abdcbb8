import { counted } from '../../content/read/problem-list.ts';
import { CALIBRATION_DUE_DAYS, OLD_SESSION_YEARS, STALE_PRICE_DAYS } from '../../measure/thresholds.ts';
import type { Row, Section } from '../shared/told.ts';
import { STALE_KINDS, type StaleItem, type StaleKind } from './stale-item.ts';

const TITLES: Readonly<Record<StaleKind, string>> = {
  price: `Prices over ${STALE_PRICE_DAYS} days old`,
  calibration: `Calibrations that have run out, or do within ${CALIBRATION_DUE_DAYS} days`,
  session: `Panels last read ${OLD_SESSION_YEARS} years ago or more`,
  procedure: 'Panels read under an earlier version of the bench procedure',
  claims: 'Claims that are old, or of no known day',
  rate: 'Exchange rates',
  tariff: 'Tariff of electricity',
  link: 'Links that do not answer as they did',
};

/** The answer in a sentence. */
export function staleLead(items: readonly StaleItem[], { lookedAt }: { lookedAt?: number } = {}): string {
  const dead = items.filter((it) => it.kind === 'link' && it.state === 'past').length;
  // Some address may stand in several places.
  const isOffline = lookedAt !== undefined && lookedAt > 1 && dead >= lookedAt;
  const offline = isOffline ? ' None answered: this machine may be offline.' : '';
  const links = lookedAt === undefined ? '' : ` ${counted(lookedAt, 'outside link')} looked at.${offline}`;
  const past = items.filter((it) => it.state === 'past').length;
  const soon = items.length - past;
  if (items.length === 0) return `Nothing has gone stale.${links}`;
  const what = [
    ...(past > 0 ? [`${counted(past, 'thing')} gone stale`] : []),
    ...(soon > 0 ? [`${soon} soon to be`] : []),
  ];
  return `${what.join(', ')}.${links}`;
}

/** What is stale under a heading for each kind, each with its place and with what to do about it. */
export function staleSections(items: readonly StaleItem[]): Section[] {
  return STALE_KINDS.flatMap((kind): Section[] => {
    const own = items.filter((it) => it.kind === kind);
    if (own.length === 0) return [];
    return [
      {
        title: TITLES[kind],
        rows: own.map(
          ({ file, line, name, text, todo }): Row => ({
            name: `${file}:${line}`,
            text: `${name}: ${text.replace(/\.$/, '')}.`,
            todo,
          }),
        ),
      },
    ];
  });
}
