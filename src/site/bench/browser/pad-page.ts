/**
 * What the pad's page starts with: how dark the room is, so that the page shows itself before the pad is there; the settings
 * of schemas, and only then the pad, which has them.
 */
import './without-eval.ts';
import { showKeptRoom } from './pad/kept-room.ts';

showKeptRoom();
void import('./pad.ts');
