// The page's content security policy, one for the page itself and for the server's header: nothing but our own files.
const rules = {
  'default-src': "'self'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

export const policy = Object.entries(rules).map(([name, value]) => `${name} ${value}`).join('; ');
