/** SVG text is put together here and nowhere else, so that escaping has one place. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** What XML 1.0 forbids in text: control characters, lone surrogates, two codes that are no characters. */
const forbidden = /[^\P{Cc}\t\n\r]|\p{Cs}|[\ufffe\uffff]/gu;

/** Text as it may stand in SVG. */
export const escapeText = (text: string): string =>
  text.replace(forbidden, '').replace(/[&<>"]/g, (c) => entities[c]);

export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  const open = opened(name, attributes);
  return content.length ? `${open}>${content.join('')}</${name}>` : `${open}/>`;
}

/** An element up to its attributes; groups begin on a line of their own. */
function opened(name: string, attributes: Attributes): string {
  let open = name === 'g' || name === 'defs' ? `\n<${name}` : `<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value === undefined) continue;
    open += ` ${key}="${typeof value === 'number' ? short(value) : escapeText(value)}"`;
  }
  return open;
}

/** Writes many paths of one look, which is spelled once. */
export function pathsOf(look: Attributes): (data: string) => string {
  const open = opened('path', look);
  return (data) => `${open} d="${data}"/>`;
}

export const title = (text: string): string => element('title', {}, escapeText(text));

/** A number without needless digits: 0.01 mm is finer than any screen shows. */
export const short = (value: number): string => String(Math.round(value * 100) / 100);

/** Edges of a picture in mm. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A whole SVG document at actual size: user units are millimeters. */
export function svgDocument(frame: Frame, name: string, ...content: readonly string[]): string {
  const width = frame.right - frame.left;
  const height = frame.bottom - frame.top;
  const root = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${short(width)}mm`,
      height: `${short(height)}mm`,
      viewBox: `${short(frame.left)} ${short(frame.top)} ${short(width)} ${short(height)}`,
    },
    title(name),
    ...content,
  );
  return `${root}\n`;
}
