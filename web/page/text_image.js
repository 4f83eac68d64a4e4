// Lines of text that our typeface can't draw alone: the browser draws them with its own typefaces, each script shaped and
// ordered as it should be, and hands out how much of each pixel is covered. Colours are lost: an emoji is its outline filled.

const fonts = ['400', '700', 'italic 400'].map((style) => (px) => `${style} ${px}px B612, sans-serif`);  // by core's Face
const most_over_em = 0.5;  // how far ink may reach beyond the line's ends; as the image of glyphs leaves room for
const least_over_em = 0.12;
const most_up_em = 1.4;    // letters with marks stacked on them higher or deeper are cut off
const most_down_em = 0.8;
const nothing = { width: 0, height: 0, pen_x: 0, baseline: 0, advance_px: 0, coverage: [] };

let context = null;

/// Our own faces have to be there before the first line is drawn with them.
export const load_faces = () => Promise.allSettled(fonts.map((font) => document.fonts.load(font(16))));

/// See TextImage in shell/platform.h.
export function text_image(text, face, px_per_em, most_px) {
  context ??= document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (!context) return nothing;
  const whole = `\u2068${text}\u2069`;  // its direction is that of its own first letter
  const dress = () => Object.assign(context, { font: fonts[face](px_per_em), textAlign: 'left', textBaseline: 'alphabetic', direction: 'ltr' });
  dress();
  const { width: natural, actualBoundingBoxLeft: left, actualBoundingBoxRight: right, actualBoundingBoxAscent: up, actualBoundingBoxDescent: down } = context.measureText(whole);
  const squeeze = natural > most_px ? most_px / natural : 1;
  // And a pixel for soft rims; never less than a little, since WebKit tells the line's own ends for those of its ink.
  const within = (reach, most_em) => Math.ceil(Math.min(Math.max(reach, least_over_em * px_per_em), most_em * px_per_em - 2)) + 1;
  const advance_px = natural * squeeze;
  const pen_x = within(left * squeeze, most_over_em);
  const baseline = within(up, most_up_em);
  const width = pen_x + Math.floor(advance_px) + within(right * squeeze - advance_px, most_over_em);
  const height = baseline + within(down, most_down_em);
  if (!(right > -left && up > -down)) return nothing;
  Object.assign(context.canvas, { width, height });
  dress();  // a new size forgets it
  context.setTransform(squeeze, 0, 0, 1, pen_x, baseline);
  context.fillText(whole, 0, 0);
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, pen_x, baseline, advance_px, coverage: data.filter((_, i) => i % 4 === 3) };
}
