/**
 * A container with the built guide and nginx in it. What nginx says goes to the container's output, since nothing in it
 * would ever clear a log.
 *
 * @param path of the guide on its host, with a slash at both ends
 */
export function containerFile(path: string): string {
  return `# The built guide, and nginx to serve it. Beside dist/ and nginx.conf:
#   docker build -t guide . && docker run --rm -p 8080:80 guide
FROM debian:stable-slim
RUN apt-get update \\
 && apt-get install -y --no-install-recommends nginx \\
 && rm -rf /var/lib/apt/lists/* /etc/nginx/sites-enabled/default \\
 && ln -sf /dev/stdout /var/log/nginx/access.log \\
 && ln -sf /dev/stderr /var/log/nginx/error.log
COPY nginx.conf /etc/nginx/conf.d/guide.conf
COPY dist/ /srv/guide${path}
EXPOSE 80
CMD ["nginx", "-g", "daemon off;"]
`;
}
