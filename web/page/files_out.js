// What goes out: downloads, and what is handed to whatever the system sends things with.
const media_types = { gpx: 'application/gpx+xml', geojson: 'application/geo+json', csv: 'text/csv', fogsheet: 'text/plain', svg: 'image/svg+xml', png: 'image/png' };
/// A sheet's text as a file.
const sheet_file = (name, text) => new File([text], name, { type: media_types.fogsheet });

/// Gives bytes or texts, one behind the other, to the user as a file of that name.
export function download(name, ...parts) {
  const type = media_types[name.split('.').at(-1)] ?? 'application/octet-stream';
  const link = document.createElement('a');
  link.download = name;
  link.href = URL.createObjectURL(new Blob(parts, { type }));
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/// What the browser hands on: nothing, links, or files too.
export function shares() {
  if (!navigator.share) return '';
  return navigator.canShare?.({ files: [sheet_file('sheet.fogsheet', '1:')] }) ? 'files' : 'links';
}

/// @return  a promise that is refused when nothing took it; a user's second thoughts are no refusal
export async function share(title, text, file_name) {
  try {
    await navigator.share(file_name ? { title, files: [sheet_file(file_name, text)] } : { title, url: text });
  } catch (error) {
    if (error.name !== 'AbortError') throw error;
  }
}
