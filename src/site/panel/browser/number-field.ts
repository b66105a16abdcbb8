import { html } from '../../shared/browser/dom.ts';

/** A field for a number from 0 up, with as many decimals as one likes. */
export const numberField = (attributes: Readonly<Record<string, string | boolean>>): HTMLInputElement =>
  html('input', { type: 'number', min: '0', step: 'any', inputmode: 'decimal', autocomplete: 'off', ...attributes });
