// The page's content security policy, one for the page itself and for the server's header: nothing but our own files. Of a
// page that is one file, nothing but what it was built of.
const rules = {
  'default-src': "'self'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

const written = (some) => Object.entries(some).map(([name, value]) => `${name} ${value}`).join('; ');

export const policy = written(rules);

/// @param scripts, styles  hashes, each in its quotes
export const one_file_policy = ({ scripts, styles }) => written({
  ...rules,
  'default-src': "'none'",
  'script-src': [...scripts, "'wasm-unsafe-eval'"].join(' '),
  'style-src': styles.join(' '),
  'img-src': 'data: blob:',
  'font-src': 'data:',
  'worker-src': 'blob:',
});
