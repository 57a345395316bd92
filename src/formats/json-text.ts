/** Short values stay on one line up to this width. */
const LINE = 120;

/** JSON for people: lists and objects on one line where they fit, the outermost always laid out. */
export function laidOutJson(value: unknown, indent = ''): string {
  const flat = onOneLine(value);
  if (indent.length + flat.length <= LINE && indent) return flat;
  const deeper = `${indent}  `;
  if (Array.isArray(value) && value.length) {
    return `[\n${value.map((item) => deeper + laidOutJson(item, deeper)).join(',\n')}\n${indent}]`;
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    const lines = Object.entries(value).map(
      ([key, item]) => `${deeper}${JSON.stringify(key)}: ${laidOutJson(item, deeper)}`,
    );
    return `{\n${lines.join(',\n')}\n${indent}}`;
  }
  return flat;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${onOneLine(item)}`);
    return entries.length ? `{ ${entries.join(', ')} }` : '{}';
  }
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`JSON cannot hold ${value}`);
  return JSON.stringify(value);
}
