/** The page of a panel's files: a button under each drawing fetches its readings, and what draws them, when it is asked to. */
import { html } from '../../shared/browser/dom.ts';

for (const figure of document.querySelectorAll<HTMLElement>('figure[data-closer]')) {
  const button = html('button', { type: 'button', class: 'closer' }, 'Look closer');
  const told = html('span', { class: 'small', role: 'status' });
  button.addEventListener('click', async () => {
    told.textContent = '';
    button.setAttribute('aria-busy', 'true');
    try {
      const { lookCloser } = await import('./close-look.ts');
      await lookCloser(figure.dataset.closer ?? '');
    } catch (error) {
      told.textContent = `That can’t be shown: ${error instanceof Error ? error.message : String(error)}. The files are below.`;
    }
    button.removeAttribute('aria-busy');
  });
  figure.append(html('p', { class: 'closer-row' }, button, ' ', told));
}
