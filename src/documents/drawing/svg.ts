import { z } from 'zod';
import { plainNumber } from '../parts/figures.js';

/** The markup of a drawing without its texts and attribute values: what a name of a list can't have written. */
function bareMarkup(svg: string): string {
  return svg.replace(/"[^"]*"/g, '""').replace(/>[^<]*</g, '><');
}

/** A drawing of ours: inline SVG without script, foreign content or outside references. */
export const SvgSchema = z
  .string()
  .startsWith('<svg ')
  .endsWith('</svg>')
  .refine(
    (svg) => !/<script|<foreignObject|<style|\s(?:on\w+|[\w:]*href)=/i.test(bareMarkup(svg)),
    'an SVG without script or references',
  );

/** Text for the inside of an SVG element or a double-quoted attribute. */
export function escapeText(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

type Attributes = Readonly<Record<string, string | number>>;

function attributes(given: Attributes): string {
  return Object.entries(given)
    .map(
      ([name, value]) => ` ${name}="${typeof value === 'number' ? plainNumber(value) : escapeText(value)}"`,
    )
    .join('');
}

/** An element with given inner markup (already escaped). */
export function element(name: string, given: Attributes, inner = ''): string {
  return inner === '' ? `<${name}${attributes(given)}/>` : `<${name}${attributes(given)}>${inner}</${name}>`;
}

/** A line of text. */
export function textAt(x: number, y: number, text: string, more: Attributes = {}): string {
  return element('text', { x, y, ...more }, escapeText(text) || ' ');
}

/** A rectangle. */
export function rect(x: number, y: number, width: number, height: number, more: Attributes = {}): string {
  return element('rect', { x, y, width, height, ...more });
}

/**
 * A whole drawing, sized in points.
 * @param alt what the drawing shows, for a reader that can't see it
 */
export function drawing(width: number, height: number, alt: string, style: string, inner: string): string {
  const size = { width: `${plainNumber(width)}pt`, height: `${plainNumber(height)}pt` };
  const box = `0 0 ${plainNumber(width)} ${plainNumber(height)}`;
  return element(
    'svg',
    { class: style, ...size, viewBox: box, role: 'img', 'aria-label': alt },
    `<title>${escapeText(alt)}</title>${inner}`,
  );
}

/**
 * A whole drawing, sized in millimetres.
 * @param alt what the drawing shows, for a reader that can't see it
 */
export function drawingInMillimetres(
  width: number,
  height: number,
  alt: string,
  style: string,
  inner: string,
): string {
  const size = { width: `${plainNumber(width)}mm`, height: `${plainNumber(height)}mm` };
  const box = `0 0 ${plainNumber(width)} ${plainNumber(height)}`;
  return element('svg', { class: style, ...size, viewBox: box, role: 'img', 'aria-label': alt }, inner);
}
