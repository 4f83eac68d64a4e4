// Whether any photograph of a chart may be kept on the device: asked at each start, so that what reads them need not come for nothing.

/// How it went with one that was to be taken out of a file: PhotographTaken in shell/photograph.h.
export const [is_kept, is_here, is_full, not_kept, is_damaged] = [0, 1, 2, 3, 4];

const mark = 'fogsheet.photographs';

export function any_kept() {
  try {
    return localStorage.getItem(mark) !== null;
  } catch {
    return false;
  }
}

export const note_kept = () => localStorage.setItem(mark, '1');
