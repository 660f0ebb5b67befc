/** The texts of markup's elements: tags taken away, characters as they are read. */
export const textOf = (markup: string): string =>
  markup
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .trim();

/** The section of a page of documentation under an anchor. */
export function sectionOf(page: string, anchor: string): string {
  const start = page.indexOf(`<section id="${anchor}"`);
  if (start < 0) throw new Error(`no section ${anchor}`);
  return page.slice(start, page.indexOf('</section>', start));
}

/** The cells of the first table in a section, row by row, without its head. */
export function rowsOf(page: string, anchor: string): string[][] {
  const body = /<tbody>(.*?)<\/tbody>/s.exec(sectionOf(page, anchor))?.[1] ?? '';
  return [...body.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row]) =>
    [...row!.matchAll(/<(t[hd])\b[^>]*>(.*?)<\/\1>/gs)].map(([, , cell]) => textOf(cell!)),
  );
}
