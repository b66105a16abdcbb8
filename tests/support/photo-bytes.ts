/** Pictures as cameras write them, for tests: with the place and the owner in them, lying on their side. */
import sharp, { type Sharp } from 'sharp';

/** Stands in the metadata of `cameraPhoto`, as what must not be published. */
export const SECRET = 'kitchen-of-the-tester';

/** A picture of four fields: red, green over blue, white. */
export function plainPicture(width: number, height: number): Sharp {
  const bytes = new Uint8Array(3 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [left, upper] = [2 * x < width, 2 * y < height];
      const colour = upper ? (left ? [220, 20, 20] : [20, 200, 20]) : left ? [20, 20, 220] : [250, 250, 250];
      bytes.set(colour, 3 * (y * width + x));
    }
  }
  return sharp(bytes, { raw: { width, height, channels: 3 } });
}

/** A JPEG with its place, its owner and a colour space of its own, to be turned by a quarter: its upper left is red. */
export function cameraPhoto(width = 1600, height = 1200): Promise<Buffer> {
  return plainPicture(width, height)
    .rotate(-90)
    .jpeg()
    .keepIccProfile()
    .withIccProfile('p3')
    .withExif({
      IFD0: { ImageDescription: SECRET, Artist: SECRET },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 3230/100',
        GPSLongitudeRef: 'W',
        GPSLongitude: '0/1 7/1 4366/100',
      },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer();
}
