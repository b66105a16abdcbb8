import { metricById } from '../measure/metrics.ts';

/** The name of a metric within a sentence. */
export function nameOf(metric: string): string {
  const { name } = metricById(metric);
  return /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
