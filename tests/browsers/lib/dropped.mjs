// Files that are dropped on a page, in any engine: they are made in the page itself, so that long ones need not be sent there.

/// @param files  [name, bytes] each
export const drop = (page, ...files) => page.evaluate((list) => {
  const dataTransfer = new DataTransfer();
  for (const [name, bytes] of list) dataTransfer.items.add(new File([new Uint8Array(bytes)], name));
  document.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
}, files.map(([name, content]) => [name, [...Buffer.from(content)]]));

/// A GPX track of so many million bytes, along some eighty miles. @param cut  whether it ends in the middle of a point
export const drop_long_track = (page, name, million_bytes, { cut = false } = {}) => page.evaluate((called, millions, is_cut) => {
  const parts = ['<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test"><trk><name>Home</name><trkseg>'];
  for (let i = 0, bytes = 0; bytes < millions * 1e6;) {
    let text = '';
    for (const end = i + 5000; i < end; i += 1) text += `<trkpt lat="${(44 + 0.05 * Math.sin(i / 9000)).toFixed(7)}" lon="${(-31.05 + i * 1e-7).toFixed(7)}"><ele>1</ele></trkpt>\n`;
    parts.push(text);
    bytes += text.length;
  }
  parts.push(is_cut ? '<trkpt lat="44.0' : '</trkseg></trk></gpx>');
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File(parts, called));
  document.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
}, name, million_bytes, cut);
