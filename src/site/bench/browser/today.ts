/** The day where the tester is, YYYY-MM-DD. */
export function today(): string {
  const now = new Date();
  const two = (it: number) => String(it).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
