/** Shows the form for a reader's own price: what it leads to is calculated by a script. */
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-own-price]')) form.hidden = false;
