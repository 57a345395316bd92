/** A color part of the way to another, both '#rrggbb'; share 0 is the first, 1 the second. */
export function mixed(from: string, to: string, share: number): string {
  const a = Number.parseInt(from.slice(1), 16);
  const b = Number.parseInt(to.slice(1), 16);
  let mix = 0;
  for (const shift of [16, 8, 0]) {
    const one = (a >> shift) & 255;
    const other = (b >> shift) & 255;
    mix = mix * 256 + Math.round(one + (other - one) * share);
  }
  return `#${mix.toString(16).padStart(6, '0')}`;
}

/** The side of a thread that turns away from the light. */
export const shadowSide = (hex: string): string => mixed(hex, '#120c08', 0.5);
/** The body of a thread: a shade deeper than its color, which is left for the sheen to reach on pale threads. */
export const body = (hex: string): string => mixed(hex, '#120c08', 0.1);
/** The sheen along the top of a thread. */
export const sheen = (hex: string): string => mixed(hex, '#ffffff', 0.45);

const mutedCloths = ['#d8cfc0', '#c9c3b6', '#d3c8c1', '#c7cac0', '#ddd5c6', '#c4bfb9'];

/** Cloth for a patch whose fabric is not known: muted, and not the same as that of patches numbered next to it. */
export const mutedCloth = (patch: number): string => mutedCloths[patch % mutedCloths.length];
