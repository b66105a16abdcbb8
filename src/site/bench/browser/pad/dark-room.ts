/** Red on black for a dark room; kept for the next visit. */
import { find } from '../sheet-form.ts';
import { choice, choose } from './kept-choices.ts';

/** Shows the page as it was chosen, and lets it be chosen. */
export function startDarkRoom(): void {
  const button = find('[data-pad-dark]');
  const show = (isDark: boolean) => {
    if (isDark) document.documentElement.dataset.room = 'dark';
    else delete document.documentElement.dataset.room;
    button.setAttribute('aria-pressed', String(isDark));
  };
  show(choice('dark') === 'yes');
  button.addEventListener('click', () => {
    const isDark = button.getAttribute('aria-pressed') !== 'true';
    show(isDark);
    choose('dark', isDark ? 'yes' : undefined);
  });
}
