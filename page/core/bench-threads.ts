/** The threads of a stitch on the bench, so that each is told from the others on the sheet and on the samples' cloth. */
const HEX = ['#8c2f3f', '#2f4a6d', '#7a5c10', '#2f6647', '#5d3357', '#40403c'] as const;

export const benchThread = (thread: number): string => HEX[thread % HEX.length];
