export type { DrawnLine, LineDrawing } from '../formats/line-drawing.js';
