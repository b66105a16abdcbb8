import { METRICS, metricById } from '../measure/metrics.ts';

const withinSentence = (name: string) =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

const NAMES: ReadonlyMap<string, string> = new Map(METRICS.map(({ id, name }) => [id, withinSentence(name)]));

/** The name of a metric within a sentence. */
export function nameOf(metric: string): string {
  return NAMES.get(metric) ?? withinSentence(metricById(metric).name);
}
