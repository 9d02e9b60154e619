import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The axe that the builder brings, and in it the colours of a page read once. */
export const axeSource = readAxe();

function readAxe(): string {
  const builder = createRequire(import.meta.url).resolve('@axe-core/playwright');
  return `${readFileSync(createRequire(builder).resolve('axe-core'), 'utf8')}\n;(${readColoursOnce})();`;
}

interface AxeColour {
  r: number;
  g: number;
  b: number;
  alpha: number;
  parseString(text: string): AxeColour;
}
declare const window: { readonly axe: { readonly commons: { readonly color: { readonly Color: { readonly prototype: AxeColour } } } } };

/** Runs in the page. Axe reads the few colours of a page thousands of times, which took a third of its time. */
function readColoursOnce(): void {
  const colour = window.axe.commons.color.Color.prototype;
  const parse = colour.parseString;
  const known = new Map<string, Pick<AxeColour, 'r' | 'g' | 'b' | 'alpha'>>();
  colour.parseString = function parseString(text) {
    const read = known.get(text);
    if (read) return Object.assign(this, read);
    const { r, g, b, alpha } = parse.call(this, text);
    known.set(text, { r, g, b, alpha });
    return this;
  };
}
