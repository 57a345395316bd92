declare module 'svg-path-parser' {
  /** A command of path data; after makeAbsolute x0, y0 is where it starts and x, y where it ends. */
  interface PathCommand {
    code: string;
    command: string;
    x: number;
    y: number;
    x0: number;
    y0: number;
    x1?: number;
    y1?: number;
    x2?: number;
    y2?: number;
    rx?: number;
    ry?: number;
    xAxisRotation?: number;
    largeArc?: boolean;
    sweep?: boolean;
  }
  const parser: {
    parseSVG(data: string): PathCommand[];
    makeAbsolute(commands: PathCommand[]): PathCommand[];
  };
  export default parser;
}
