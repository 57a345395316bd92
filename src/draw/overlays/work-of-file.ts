import { onlyStops, runsOfStop } from '../../check/density/runs-of-stop.js';
import { sewnBox } from '../../check/density/sewn-box.js';
import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import { clothPicture } from '../cloth.js';
import { element, type Frame, title } from '../svg.js';
import { threadGroup, threadPicture } from '../thread.js';
import type { ShownWork } from './shown-work.js';
import { stopColor } from './stop-looks.js';

/** Cloth that is shown around what a stitch file sews, mm. */
const AROUND = 3;

/**
 * A stitch file as overlays are drawn from it: it tells no seams, fabrics or colors, so thread gets those of the stops.
 * @param wanted color stops, from 1, that are sewn; all when not given
 */
export function workOfFile(name: string, all: SewnStitches, wanted?: ReadonlySet<number>): ShownWork {
  const sewn = wanted ?? new Set(all.stops.map((_, i) => i + 1));
  const stitches = onlyStops(all, sewn);
  const frame = frameOf(all);
  const bare = { width: 0, height: 0, outline: null, seams: [], junctions: [], patches: [] };
  return {
    name,
    map: null,
    frame,
    stitches,
    stops: all.stops.map((_, i) => ({ title: '', isShown: sewn.has(i + 1) })),
    bare: null,
    contrasts: null,
    thread: () =>
      clothPicture(bare, frame) +
      stitches.stops
        .map(({ width }, stop) =>
          element(
            'g',
            threadGroup,
            title(`stop ${stop + 1}`),
            threadPicture(runsOfStop(stitches, stop), stopColor(stop), width),
          ),
        )
        .join(''),
  };
}

/** Whole millimeters around all stitches, whichever are shown: pictures of the same file lie on each other. */
const frameOf = (sewn: SewnStitches): Frame =>
  sewnBox(sewn, AROUND) ?? { left: 0, top: 0, right: 20, bottom: 20 };
