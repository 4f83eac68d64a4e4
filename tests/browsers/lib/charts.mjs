// Charts to lay under a sheet as photographs, and how they are seen there. They are made on a canvas of the browser (whose PNG and JPEG
// are the independent encoders), each with patches of colour at known pixels.
import { colour, picture } from './pictures.mjs';

/// By day, as the look's table of colours has it.
export const paper = colour('#FCFAF4');

/// A chart: white, with patches [x, y, "#rrggbb"] of `side` pixels about their middles.
export async function chart(page, { width = 1200, height = 900, patches, side = 60, type = 'image/png' }) {
  const base64 = await page.evaluate(async (w, h, list, wide, kind) => {
    const canvas = new OffscreenCanvas(w, h);
    const pen = canvas.getContext('2d');
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, w, h);
    for (const [x, y, ink] of list) {
      pen.fillStyle = ink;
      pen.fillRect(x - wide / 2, y - wide / 2, wide, wide);
    }
    const blob = await canvas.convertToBlob({ type: kind, quality: 0.95 });
    return new Promise((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(reader.result.split(',')[1]);
      reader.readAsDataURL(blob);
    });
  }, width, height, patches, side, type);
  return Buffer.from(base64, 'base64');
}

/// With EXIF's orientation (tag 274), as cameras put it in.
export function turned(jpeg, orientation) {
  const tiff = Buffer.from('4d4d002a00000008000101120003000000010000000000000000', 'hex');
  tiff[19] = orientation;
  const segment = Buffer.concat([Buffer.from([0xff, 0xe1, 0, tiff.length + 8]), Buffer.from('Exif\0\0', 'latin1'), tiff]);
  return Buffer.concat([jpeg.subarray(0, 2), segment, jpeg.subarray(2)]);
}

/// What a patch looks like by day: the paper, darkened by so much of it.
export const by_day = (ink, opacity) => colour(ink).map((channel, i) => paper[i] * (1 - opacity + opacity * channel / 255));
/// How much the strongest setting shows, by day.
export const strong = 0.58;

/// The page as it is seen once it is drawn; about() is the ink that lies about a place.
export const shot = async (page) => {
  await page.evaluate(() => new Promise((drawn) => { requestAnimationFrame(() => requestAnimationFrame(drawn)); }));
  const seen = picture(await page.screenshot());
  // What lies about a place: lines and letters of the sheet that cross it are the fewer.
  const around = Array.from({ length: 17 * 17 }, (_, i) => ({ dx: i % 17 - 8, dy: Math.floor(i / 17) - 8 }));
  const middle_of = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)];
  seen.about = ({ x, y }) => [0, 1, 2].map((channel) => middle_of(around.map(({ dx, dy }) => seen.at({ x: x + dx, y: y + dy })[channel])));
  return seen;
};
