import { defineHastPlugin } from 'satteri';

/**
 * Tables in the tester's prose may be wider than a telephone: each gets a frame of its own to scroll in, which
 * the keyboard reaches, instead of widening the page.
 */
export const wideTables = tablesNamed('Table');

/** The same, under names that begin otherwise: no two on a page may be called alike. */
export function tablesNamed(beginning: string) {
  return defineHastPlugin({
    name: 'wide-tables',
    element: {
      filter: ['table'],
      visit(node, context) {
        const heads = /^\s*(.*?)\s*$/m.exec(context.textContent(node))?.[1] ?? '';
        context.wrapNode(node, {
          type: 'element',
          tagName: 'div',
          properties: { className: ['sheet'], role: 'group', tabIndex: 0, ariaLabel: `${beginning}: ${heads}` },
          children: [],
        });
      },
    },
  });
}
