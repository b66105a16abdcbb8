/** What the pad's page starts with: the settings of schemas, and only then the pad, which has them. */
import './without-eval.ts';

void import('./pad.ts');
