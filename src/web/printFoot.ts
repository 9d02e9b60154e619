import { useEffect } from 'react';
import { isolate } from './format.ts';

/** What stands at the foot of every printed page: who it is about, and whose page it is. Page n of m is in print.css. */
const foot = { name: '', page: '' };
let sheet: CSSStyleSheet | null = null;
let isHidden = false;

/** A style sheet made by script is not inline text, so the page's policy allows it; the words go in as a quoted string. */
function write(): void {
  if (!sheet) {
    sheet = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  const text = isHidden ? '' : [foot.name && isolate(foot.name), foot.page].filter(Boolean).join(' · ');
  sheet.replaceSync(`@page { @bottom-left { content: ${quoteCss(text)}; font-size: 9pt; } }`);
}

/** A hidden screen prints no name. */
export function setFootHidden(hidden: boolean): void {
  isHidden = hidden;
  write();
}

/** A CSS string: backslash, quote and line breaks escaped. */
export function quoteCss(text: string): string {
  return `"${text.replace(/["\\\n\r\f]/g, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `)}"`;
}

export function usePrintFoot(part: Partial<typeof foot>): void {
  const { name, page } = part;
  useEffect(() => {
    if (page !== undefined) foot.page = page;
    if (name !== undefined) foot.name = name;
    write();
    return () => {
      if (name !== undefined) foot.name = '';
      write();
    };
  }, [name, page]);
}
