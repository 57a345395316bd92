/** Letters that count: A to Z, then AA, AB and so on. @param index from 0 */
export function lettered(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : lettered(Math.floor(index / 26) - 1) + last;
}
