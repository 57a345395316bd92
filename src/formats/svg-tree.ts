import { SaxesParser } from 'saxes';
import { InputError } from '../input-error.js';

/** An element of a drawing; names are without a namespace prefix, elements of other namespaces are left out. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  /** character data directly inside */
  readonly text: string;
  /** line of the file, from 1 */
  readonly line: number;
}

/** Groups inside groups deeper than any drawing program makes them. */
const DEEPEST = 200;
/** Elements in one drawing; a block has a few hundred. */
export const MOST_ELEMENTS = 50_000;

/**
 * The elements of an SVG file. Entities that a document type declares are never expanded: a file that uses one is
 * refused, so none can blow up.
 *
 * @throws InputError with the line number when the text is not well-formed XML, ends early, or is no SVG
 */
export function readSvgTree(text: string, where: string): SvgElement {
  type Open = {
    name: string;
    attributes: Record<string, string>;
    children: Open[];
    text: string;
    line: number;
  };
  const parser = new SaxesParser();
  const open: (Open | null)[] = [];
  let count = 0;
  let root: Open | null = null;
  const refuse = (line: number, wrong: string, right: string): never => {
    throw new InputError('not-svg', `${where} line ${line}`, wrong, right);
  };
  parser.on('error', (error) => {
    const reason = error.message.replace(/^(.*?:)?\d+:\d+: /, '').replace(/\.$/, '');
    if (/entity/i.test(reason)) {
      refuse(parser.line, `uses an entity (${reason})`, 'save the drawing as plain SVG, without entities');
    }
    refuse(
      parser.line,
      `is not well-formed XML (${reason})`,
      'give a whole SVG file as a drawing program saves it',
    );
  });
  parser.on('opentag', (tag) => {
    const [prefix, local] = tag.name.includes(':') ? tag.name.split(':') : ['', tag.name];
    if (++count > MOST_ELEMENTS) {
      refuse(parser.line, `holds more than ${MOST_ELEMENTS} elements`, 'keep the lines of the block alone');
    }
    if (open.length >= DEEPEST)
      refuse(parser.line, `is nested more than ${DEEPEST} deep`, 'ungroup the drawing');
    const parent = open.at(-1);
    if (root === null && local !== 'svg') {
      refuse(parser.line, `begins with <${tag.name}>`, 'an SVG drawing begins with <svg>');
    }
    if ((prefix !== '' && prefix !== 'svg') || parent === null) {
      open.push(null);
      return;
    }
    const element: Open = {
      name: local,
      attributes: { ...tag.attributes },
      children: [],
      text: '',
      line: parser.line,
    };
    parent?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  const addText = (data: string) => {
    const element = open.at(-1);
    if (element) element.text += data;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.write(text.replace(/^\uFEFF/, '')).close();
  return root ?? refuse(1, 'is empty', 'give an SVG drawing');
}
