import { sitePath } from '../shared/site-address.ts';
import {
  ASK_AGAIN,
  EMBEDDABLE,
  FOR_GOOD,
  FRAMED_BY_ALL,
  FRAMED_BY_NONE,
  HEADERS,
  KEPT_FOR_GOOD,
  SHARED,
} from './serving-rules.ts';

/** Where nginx finds the files, and where it listens. */
export interface NginxPlaces {
  /** Folder that stands for the top of the host; below a path the guide lies in it under that path. */
  root?: string;
  /** Port, or address and port. */
  listen?: string;
}

/**
 * What nginx needs to serve the guide: a file for its `http` block, as `/etc/nginx/conf.d/` holds them. Headers follow
 * the address by maps, since a `location` with a header of its own would drop all others.
 *
 * @param site address at which the guide is published
 */
export function nginxFile(site: string, { root = '/srv/guide', listen = '80' }: NginxPlaces = {}): string {
  const path = sitePath(site);
  const top = path.slice(0, -1);
  const map = (
    variable: string,
    otherwise: string,
    folders: readonly string[],
    value: string,
  ) => `map $uri ${variable} {
  default "${otherwise}";
${folders.map((it) => `  "~^${pattern(`${top}${it}`)}" "${value}";`).join('\n')}
}`;
  const headers = [
    ['Content-Security-Policy', '$guide_policy'],
    ['Cache-Control', '$guide_cache'],
    // Left out where it is empty.
    ['Access-Control-Allow-Origin', '$guide_readers'],
    ...HEADERS,
  ];
  return `# The guide at ${site}, as static files.${path === '/' ? '' : ` It lies in ${root}${path}, since it has a path.`}
# Put TLS before it, or into it, and then add: add_header Strict-Transport-Security "max-age=31536000" always;
${map('$guide_policy', FRAMED_BY_NONE, EMBEDDABLE, FRAMED_BY_ALL)}
${map('$guide_cache', ASK_AGAIN, KEPT_FOR_GOOD, FOR_GOOD)}
${map('$guide_readers', '', SHARED, '*')}

server {
  listen ${listen};
  server_name ${new URL(site).hostname};
  server_tokens off;
  root ${root};
  index index.html;
  error_page 404 ${top}/404.html;
  # Whatever name and port readers came by stay theirs.
  absolute_redirect off;

  charset utf-8;
  charset_types application/javascript application/json application/xml image/svg+xml text/css text/csv text/plain text/xml;
  gzip on;
  gzip_vary on;
  gzip_types application/javascript application/json application/xml image/svg+xml text/css text/csv text/plain text/xml;

${headers.map(([name, value]) => `  add_header ${name} "${value}" always;`).join('\n')}

  # What is for other hosts, or was left lying.
  location ~ "/(\\.(?!well-known/)|_headers$|_redirects$)" {
    return 404;
  }
  location ~ "\\.csv$" {
    types { text/csv csv; }
  }
}
`;
}

/** A path for a pattern. */
const pattern = (path: string) => path.replace(/[.+*?^$()[\]{}|\\]/g, '\\$&');
