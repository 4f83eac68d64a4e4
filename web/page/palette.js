// Runs before anything is painted, so that a night screen never flashes white: the palette that was chosen here, else the
// one that the system asks for. Dark starts in dusk, never in night.
(() => {
  const asks = (query) => matchMedia(query).matches;
  const suggested = () => {
    if (asks('(forced-colors: active)') || asks('(prefers-contrast: more)')) return 'high-contrast';
    return asks('(prefers-color-scheme: dark)') ? 'dusk' : 'day';
  };
  let chosen = null;
  try {
    chosen = localStorage.getItem('fogsheet.palette');
  } catch {
    // storage is forbidden: every start is a first one
  }
  let text = null;
  try {
    text = localStorage.getItem('fogsheet.text-size');
  } catch {
    // as above
  }
  document.documentElement.dataset.text = text || '100';
  document.documentElement.dataset.suggested = suggested();
  const palette = chosen || suggested();
  document.documentElement.dataset.palette = palette;
  const behind = {{behind}};
  document.querySelector('meta[name=theme-color]').content = behind[palette] ?? behind.day;
})();
