import type { ShownFigure } from '../shared/shown-figure.ts';

/** A figure of the panel's page on the page of its files: where its calculation and flags stand from there. */
export function onFilesPage(it: ShownFigure): ShownFigure {
  return {
    ...it,
    calculation: it.calculation.startsWith('files/') ? it.calculation.slice('files/'.length) : `../${it.calculation}`,
    flagsAt: it.flagsAt.startsWith('files/') ? it.flagsAt.slice('files/'.length) : `../${it.flagsAt}`,
  };
}
