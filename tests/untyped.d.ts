declare module 'jsts/*';

declare module 'polylabel' {
  export default function polylabel(
    rings: readonly (readonly (readonly number[])[])[],
    precision?: number,
  ): number[] & { distance: number };
}
