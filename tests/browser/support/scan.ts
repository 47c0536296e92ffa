import type { Locator } from 'playwright-core';
import decodeQr from 'qr/decode.js';

interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and alpha of each, in base 64. */
  readonly rgba: string;
}

/** What a camera reads off a part of a page as it is on the screen. Throws where there is no code that can be read. */
export async function scan(part: Locator): Promise<string> {
  const picture = (await part.screenshot()).toString('base64');
  const { width, height, rgba } = await pixelsOf(part, picture);
  return decodeQr({ width, height, data: new Uint8ClampedArray(Buffer.from(rgba, 'base64')) });
}

/** The browser that took the picture unpacks it too. */
const pixelsOf = (part: Locator, png: string): Promise<Pixels> =>
  part.page().evaluate(`(async () => {
    const bytes = Uint8Array.from(atob('${png}'), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
    canvas.drawImage(image, 0, 0);
    const { data, width, height } = canvas.getImageData(0, 0, image.width, image.height);
    return { width, height, rgba: btoa(Array.from(data, (byte) => String.fromCharCode(byte)).join('')) };
  })()`);
