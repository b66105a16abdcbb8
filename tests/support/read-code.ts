/** What the code on a picture says, read by a library that had no part in making it. */
import jsQR from 'jsqr';
import sharp from 'sharp';

/** @param width of the picture when it is looked at, px; undefined where no code is found */
export async function readCode(picture: Buffer, width: number): Promise<string | undefined> {
  const { data, info } = await sharp(picture)
    .resize({ width })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data;
}
