import { type Tool, takeTool, tool } from '../../state/drawing/board.js';

/** What is drawn with; each as a small picture, in a square of 24. */
const TOOLS: readonly { readonly tool: Tool; readonly title: string; readonly picture: string }[] = [
  {
    tool: 'move',
    title: 'Move',
    picture: 'M3 17 C8 3 16 21 21 7 M3 14 a3 3 0 1 0 .1 0 M21 4 a3 3 0 1 0 .1 0',
  },
  { tool: 'straight', title: 'Straight', picture: 'M4 20 L20 4' },
  { tool: 'curved', title: 'Curved', picture: 'M4 20 C4 9 12 4 20 4' },
  { tool: 'fabric', title: 'Fabric', picture: 'M4 6 L18 3 L21 17 L8 21 Z M6.5 13 L19.5 10 M11 4.5 L14.5 19' },
  { tool: 'photo', title: 'Photo', picture: 'M3 6 H21 V19 H3 Z M3 16 L9 10 L14 15 L17 12 L21 16 M16 9 h.1' },
];

export function Tools() {
  return (
    <fieldset class="tools">
      <legend class="unseen">What you draw with</legend>
      {TOOLS.map(({ tool: one, title, picture }) => (
        <label key={one}>
          <input type="radio" name="tool" checked={tool.value === one} onChange={() => takeTool(one)} />
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d={picture} />
          </svg>
          {title}
        </label>
      ))}
    </fieldset>
  );
}
