/** What every answer to the window carries, from Electron's own protocol and from the loopback server alike. */

/** The empty style element that plotly.js adds and fills through the style sheet's own interface. */
const emptyStyle = "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='";
/** The one rule that react-aria-components 1.22.1 adds; another version may change it. */
const reactAriaStyle = "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='";

const directives: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'worker-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'style-src': `'self' ${emptyStyle} ${reactAriaStyle}`,
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

/** As a header and not in the page: a worker takes its policy from its own answer. */
export function contentSecurityPolicy(): string {
  return Object.entries(directives)
    .map(([name, allowed]) => `${name} ${allowed}`)
    .join('; ');
}

export function windowHeaders(): Record<string, string> {
  return {
    'Content-Security-Policy': contentSecurityPolicy(),
    'X-Content-Type-Options': 'nosniff',
    'Cache-Control': 'no-store',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
  };
}
