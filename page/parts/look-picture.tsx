import { lookImage } from '../state/look.js';
import { view } from '../state/view.js';

/** What is measured, where the thread would lie. */
export function LookPicture() {
  const look = lookImage.value;
  if (!look) return null;
  const { scale, x, y } = view.value;
  const { image, left, top, width, height } = look;
  return (
    <img
      src={image.src}
      alt=""
      style={{
        transform: `translate(${x + scale * left}px, ${y + scale * top}px)`,
        width: `${scale * width}px`,
        height: `${scale * height}px`,
      }}
    />
  );
}
