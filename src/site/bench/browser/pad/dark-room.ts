/** Red on black for a dark room; kept for the next visit. */
import { find } from '../sheet-form.ts';
import { choose } from './kept-choices.ts';
import { isRoomDark, showRoom } from './kept-room.ts';

/** Lets the room be chosen; the page shows it as it was kept already. */
export function startDarkRoom(): void {
  const button = find('[data-pad-dark]');
  const press = (isDark: boolean) => button.setAttribute('aria-pressed', String(isDark));
  press(isRoomDark());
  button.addEventListener('click', () => {
    const isDark = button.getAttribute('aria-pressed') !== 'true';
    showRoom(isDark);
    press(isDark);
    choose('dark', isDark ? 'yes' : undefined);
  });
}
