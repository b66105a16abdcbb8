/** Before any test of a run: the demonstration is laid out anew where its sources have changed. */
export { layDemo as setup } from './demo-folder.ts';
