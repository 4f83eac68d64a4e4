// Whether any photograph of a chart may be kept on the device: asked at each start, so that what reads them need not come for nothing.

const mark = 'fogsheet.photographs';

export function any_kept() {
  try {
    return localStorage.getItem(mark) !== null;
  } catch {
    return false;
  }
}

export const note_kept = () => localStorage.setItem(mark, '1');
