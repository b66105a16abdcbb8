/** Goes where the page's link leads, with the part and the choices that the address names. */
const link = document.querySelector<HTMLAnchorElement>('a[data-own]');
if (link) {
  const to = new URL(link.href);
  to.search = location.search;
  if (location.hash !== '') to.hash = location.hash;
  location.replace(to);
}
