import { Refused } from '../core-call.js';

/** The image of a photo, as the browser reads it. */
export async function readPhoto(file: File): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file);
  } catch {
    const wrong = 'this browser sees no picture in it';
    throw new Refused({ where: file.name, wrong, right: 'a photo as JPEG or PNG' });
  }
}
