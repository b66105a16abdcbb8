import { sitePath } from '../shared/site-address.ts';
import { HEADERS, HEADERS_BY_FOLDER, type HeaderByFolder } from './serving-rules.ts';

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
  const map = ({ name, otherwise, folders, value }: HeaderByFolder) => `map $uri ${variable(name)} {
  default "${otherwise}";
${folders.map((it) => `  "~^${pattern(`${top}${it}`)}" "${value}";`).join('\n')}
}`;
  // One whose variable is empty is left out.
  const headers = [...HEADERS_BY_FOLDER.map(({ name }) => [name, variable(name)]), ...HEADERS];
  return `# The guide at ${site}, as static files.${path === '/' ? '' : ` It lies in ${root}${path}, since it has a path.`}
# Put TLS before it, or into it, and then add: add_header Strict-Transport-Security "max-age=31536000" always;
${HEADERS_BY_FOLDER.map(map).join('\n')}

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

/** What nginx calls the value of a header: `$guide_cache_control`. */
const variable = (name: string) => `$guide_${name.toLowerCase().replaceAll('-', '_')}`;

/** A path for a pattern. */
const pattern = (path: string) => path.replace(/[.+*?^$()[\]{}|\\]/g, '\\$&');
