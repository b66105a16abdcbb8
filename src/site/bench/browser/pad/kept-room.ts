import { choice } from './kept-choices.ts';

/** Whether the tester works in the dark, as kept from the last visit. */
export function isRoomDark(): boolean {
  return choice('dark') === 'yes';
}

/** Red on black, or the usual colours. */
export function showRoom(isDark: boolean): void {
  if (isDark) document.documentElement.dataset.room = 'dark';
  else delete document.documentElement.dataset.room;
}

/** Shows the page, black until then, as its room was kept. */
export function showKeptRoom(): void {
  showRoom(isRoomDark());
  const pad = document.querySelector<HTMLElement>('#bench-pad');
  if (pad) pad.dataset.ready = '';
}
