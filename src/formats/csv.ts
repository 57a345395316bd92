/**
 * Rows of text as comma-separated values (RFC 4180): lines end with CR LF, and a field that holds a comma, a quote or a
 * line break stands in quotes, its own quotes doubled.
 */
export const writeCsv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');

function field(value: string | number): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
