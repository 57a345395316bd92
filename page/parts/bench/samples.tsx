import { useEffect, useRef } from 'preact/hooks';
import { drawSamples } from '../../draw/samples.js';
import { benched } from '../../state/bench/on-bench.js';

/** The stitch as it lies on a straight seam, a curve, a corner and a ring. */
export function Samples() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const samples = benched.value?.samples ?? null;
  useEffect(() => {
    const draw = () => canvas.current && samples && drawSamples(canvas.current, samples);
    draw();
    const watch = new ResizeObserver(draw);
    watch.observe(canvas.current!);
    return () => watch.disconnect();
  }, [samples]);
  return (
    <figure class="samples">
      <canvas
        ref={canvas}
        role="img"
        aria-label="The stitch on a straight seam, a curve, round a corner and on a ring"
      />
    </figure>
  );
}
