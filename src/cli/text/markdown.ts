import type { Section } from '../../site/shared/told.ts';

/** Sections as Markdown: a heading and a list each. */
export function sectionMarkdown(title: string, lead: string, sections: readonly Section[]): string {
  const parts = sections.map(({ title: heading, lead: first, rows }) => {
    const list = rows.map(({ name, text }) => {
      if (name === '' || text === '') return `- ${escaped(name || text)}`;
      return `- **${escaped(name)}**: ${escaped(text)}`;
    });
    return [`## ${escaped(heading)}`, ...(first === undefined ? [] : [escaped(first)]), list.join('\n')].join('\n\n');
  });
  return [`# ${escaped(title)}`, escaped(lead), ...parts].join('\n\n');
}

/** What Markdown would take for its own marks. */
const escaped = (text: string) => text.replace(/[\\`*_[\]<>|#]/g, '\\$&');
