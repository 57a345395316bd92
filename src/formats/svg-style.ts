import type { SvgElement } from './svg-tree.js';

/** What a shape looks like as far as lines and patches go. Unset values stay undefined: nobody said so. */
export interface Look {
  readonly fill?: string;
  readonly stroke?: string;
  readonly 'fill-opacity'?: string;
  readonly 'fill-rule'?: string;
  readonly visibility?: string;
  readonly color?: string;
  readonly display?: string;
  readonly 'clip-path'?: string;
  readonly mask?: string;
  readonly transform?: string;
  readonly 'transform-origin'?: string;
  readonly translate?: string;
  readonly rotate?: string;
  readonly scale?: string;
  readonly 'offset-path'?: string;
}

type Property = keyof Look;
const INHERITED: readonly Property[] = ['fill', 'stroke', 'fill-opacity', 'fill-rule', 'visibility', 'color'];
/** Of these an element's own value counts. */
const OWN: readonly Property[] = ['display', 'transform', 'transform-origin', 'clip-path', 'mask'];
/** These can only be written in a style; as attributes they mean something else or nothing. */
const STYLE_ONLY: readonly Property[] = ['translate', 'rotate', 'scale', 'offset-path'];
const IN_ATTRIBUTES = [...INHERITED, ...OWN];
const IN_STYLES = [...IN_ATTRIBUTES, ...STYLE_ONLY];

/** A rule of a style sheet whose selector is a single step: element, .class, #id and their combinations. */
interface Rule {
  readonly element: string | null;
  readonly id: string | null;
  readonly classes: readonly string[];
  readonly declarations: Readonly<Record<string, string>>;
  readonly weight: number;
}

export interface StyleSheet {
  /** in the order in which they win */
  readonly rules: readonly Rule[];
  /** selectors, as written, of rules that say something of lines and are not applied */
  readonly passedOver: readonly string[];
}

/**
 * The rules of the drawing's style elements. Drawing programs write colors as classes; at-rules and selectors that look
 * at neighbors, ancestors or states are passed over.
 */
export function readStyleSheet(root: SvgElement): StyleSheet {
  const rules: Rule[] = [];
  const passedOver: string[] = [];
  const visit = (element: SvgElement) => {
    if (element.name === 'style') {
      for (const { selectors, body } of blocksOf(element.text)) {
        const declarations = readDeclarations(body);
        const says = IN_STYLES.some((name) => declarations[name] !== undefined);
        for (const selector of selectors.split(',').map((text) => text.trim())) {
          const rule = ruleFor(selector, declarations);
          if (rule) rules.push(rule);
          else if (says && selector !== '') passedOver.push(selector);
        }
      }
    }
    element.children.forEach(visit);
  };
  visit(root);
  return { rules: rules.sort((a, b) => a.weight - b.weight), passedOver };
}

/** The blocks of a style sheet that are not at-rules. */
function blocksOf(text: string): { readonly selectors: string; readonly body: string }[] {
  const blocks: { selectors: string; body: string }[] = [];
  const plain = withoutComments(text).replace(/<!--|-->/g, '');
  let depth = 0;
  let start = 0;
  let selector = '';
  for (let i = 0; i < plain.length; i++) {
    if (plain[i] === '{' && depth++ === 0) {
      selector = plain.slice(start, i).split(';').at(-1)!.trim();
      start = i + 1;
    } else if (plain[i] === '}' && depth > 0 && --depth === 0) {
      if (!selector.startsWith('@')) blocks.push({ selectors: selector, body: plain.slice(start, i) });
      start = i + 1;
    }
  }
  return blocks;
}

/** A comment that does not end goes to the end of the text. */
function withoutComments(text: string): string {
  const [first, ...rest] = text.split('/*');
  let plain = first;
  let inside = false;
  for (const part of rest) {
    // what follows a comment's beginning inside a comment belongs to it
    const end = part.indexOf('*/');
    inside = end < 0;
    if (!inside) plain += part.slice(end + 2);
  }
  return plain;
}

/** Null when the selector is not a single step. */
function ruleFor(selector: string, declarations: Rule['declarations']): Rule | null {
  const found = /^(\*|[a-z][\w-]*)?((?:[.#][\w-]+)*)$/i.exec(selector);
  if (!found || selector === '') return null;
  const marks = found[2].match(/[.#][\w-]+/g) ?? [];
  const ids = marks.filter((mark) => mark.startsWith('#')).map((mark) => mark.slice(1));
  const classes = marks.filter((mark) => mark.startsWith('.')).map((mark) => mark.slice(1));
  const element = found[1] && found[1] !== '*' ? found[1] : null;
  const weight = 10000 * ids.length + 100 * classes.length + (element ? 1 : 0);
  return { element, id: ids[0] ?? null, classes, declarations, weight };
}

function readDeclarations(body: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const part of body.split(';')) {
    const colon = part.indexOf(':');
    if (colon < 0) continue;
    const value = part
      .slice(colon + 1)
      .replace(/!\s*important\s*$/i, '')
      .trim();
    found[part.slice(0, colon).trim().toLowerCase()] = value;
  }
  return found;
}

/** What cuts or covers part of an element, as written; null when nothing does. */
export const clipOf = (look: Look): string | null =>
  (['clip-path', 'mask'] as const).find((name) => look[name] !== undefined && look[name] !== 'none') ?? null;

/** The look of an element inside a parent: attributes, then style sheet, then its own style, each stronger. */
export function lookOf(element: SvgElement, parent: Look, { rules }: StyleSheet): Look {
  const look: Record<string, string | undefined> = {};
  for (const name of INHERITED) look[name] = parent[name];
  const set = (values: Readonly<Record<string, string>>, names = IN_STYLES) => {
    for (const name of names) {
      // no value means more by its spaces, and long runs of them would be gone through over and over
      const value = values[name]?.replace(/\s+/g, ' ').trim();
      if (value && value !== 'inherit') look[name] = value;
    }
  };
  set(element.attributes, IN_ATTRIBUTES);
  const classes = (element.attributes.class ?? '').split(/\s+/);
  for (const rule of rules) {
    if (rule.element && rule.element !== element.name) continue;
    if (rule.id && rule.id !== element.attributes.id) continue;
    if (rule.classes.every((name) => classes.includes(name))) set(rule.declarations);
  }
  if (element.attributes.style) set(readDeclarations(element.attributes.style));
  return look;
}
