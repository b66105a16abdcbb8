/** Draws the plots from the tables on the page, when asked; the drawing library is loaded only then. */
const ask = document.querySelector<HTMLElement>('[data-plots]');
const said = document.querySelector<HTMLElement>('[data-plots-status]');

if (ask && said) {
  ask.hidden = false;
  ask.querySelector('button')?.addEventListener('click', async () => {
    said.textContent = 'Drawing …';
    try {
      const { drawPlot } = await import('./plot-drawing.ts');
      const sections = [...document.querySelectorAll<HTMLElement>('[data-plot]')];
      for (const section of sections) drawPlot(section);
      ask.hidden = true;
      said.textContent = `${sections.length} plots drawn. Each point leads to its panel.`;
      sections[0]?.querySelector<HTMLElement>('[data-chart] a')?.focus();
    } catch {
      said.textContent = 'The plots could not be drawn; the tables hold the same numbers.';
    }
  });
}

// A module, so that its names are its own.
export {};
