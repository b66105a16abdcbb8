import { parseYaml, type YamlData, type YamlError } from './parse-yaml.ts';

/** Something wrong in the YAML itself. */
export interface YamlProblem {
  line: number;
  found: string;
  wanted: string;
  hint: string;
}

/** What YAML was read to: no data where it can't be read at all. */
export interface ReadYaml {
  read?: YamlData;
  problems: YamlProblem[];
}

/** YAML as it stands, for a text that no hand has laid out: nothing is taken for a slip. */
export const readAsIs = (yaml: string): ReadYaml => told(parseYaml(yaml));

/** What came of reading, with its errors as problems. */
export function told(read: YamlData | { errors: YamlError[] }): ReadYaml {
  if (!('errors' in read)) return { read, problems: [] };
  return { problems: read.errors.map((it) => ({ ...it, wanted: 'YAML that can be read' })) };
}
