import { SaxesParser } from 'saxes';

export interface Seen {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** text of its own title, if it has one */
  title?: string;
  readonly children: Seen[];
}

/** A document as a tree; throws when it is not well-formed XML. */
export function svgTree(svg: string): Seen {
  const root: Seen = { name: '', attributes: {}, children: [] };
  const open = [root];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const seen: Seen = { name, attributes: { ...attributes } as Record<string, string>, children: [] };
    open[open.length - 1].children.push(seen);
    open.push(seen);
  });
  parser.on('text', (text) => {
    if (open[open.length - 1].name === 'title') open[open.length - 2].title = text;
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(svg).close();
  return root.children[0];
}

/** An element and all within it, in drawing order. */
export const allWithin = (seen: Seen): Seen[] => [seen, ...seen.children.flatMap(allWithin)];

/** Elements whose title matches. */
export const titled = (svg: string, wanted: RegExp): Seen[] =>
  allWithin(svgTree(svg)).filter(({ title }) => title !== undefined && wanted.test(title));
