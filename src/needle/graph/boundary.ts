/**
 * What the rest of a chain must know of the units already passed: for each node shared with later units whether its
 * degree so far is odd, and which of these nodes hang together; how many ends of the trail are placed; whether the sewn
 * legs are already closed off. Written as a string, one character a node and one for the rest, so that equal states are
 * equal keys.
 */
export type Boundary = string;

/** One node: bit 0 is the parity of its degree (the trail's ends toggle it), above it the number of its piece; 0 when unsewn. */
export type Codes = number[];

export const START: Boundary = String.fromCharCode(0);

/** Pieces are renumbered in order of appearance, so that only the grouping counts. `more` is appended as it is. */
export function encode(codes: Codes, ends: number, closed: boolean, more: readonly number[] = []): Boundary {
  let text = '';
  let pieces = 0;
  const seen: number[] = [];
  for (let i = 0; i < codes.length; i++) {
    const piece = codes[i] >> 1;
    let name = 0;
    if (piece > 0) {
      if (!seen[piece]) seen[piece] = ++pieces;
      name = seen[piece];
    }
    text += String.fromCharCode((name << 1) | (codes[i] & 1));
  }
  for (let i = 0; i < more.length; i++) text += String.fromCharCode(more[i]);
  return text + String.fromCharCode(ends * 2 + (closed ? 1 : 0));
}

export function decode(state: Boundary): { codes: Codes; ends: number; closed: boolean } {
  const codes: Codes = [];
  for (let i = 0; i < state.length - 1; i++) codes.push(state.charCodeAt(i));
  const rest = state.charCodeAt(state.length - 1);
  return { codes, ends: rest >> 1, closed: (rest & 1) === 1 };
}

/** How many ends of the trail are placed. */
export const endsPlaced = (state: Boundary): number => state.charCodeAt(state.length - 1) >> 1;
