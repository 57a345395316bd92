import { laidOutJson } from '../../../src/formats/json-text.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';

/** A stitch as the file that a folder of one's own holds. */
export const textOf = (record: StitchRecord): string => `${laidOutJson(record)}\n`;
