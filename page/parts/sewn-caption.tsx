import { sewnTo } from '../state/look.js';
import { sewnTitle } from '../state/sewn-title.js';
import { picture } from '../state/work.js';

/** Below the block, while it is not all sewn: how far it is. */
export function SewnCaption() {
  const stops = picture.value?.stops ?? [];
  if (sewnTo.value === null) return null;
  return <output class="caption">{sewnTitle(Math.min(sewnTo.value, stops.length), stops)}</output>;
}
