// What a page may do: run and style itself from its own files, show pictures it made, and nothing else; no request leaves.

/** Content-Security-Policy; `scripts` and `styles` are sources such as 'self' or hashes. */
export const policy = (scripts, styles) =>
  [
    "default-src 'none'",
    `script-src ${scripts}`,
    `style-src ${styles}`,
    "img-src 'self' data: blob:",
    `worker-src ${scripts === "'self'" ? "'self' blob:" : "blob:"}`,
    "connect-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

/** Headers of every answer of the local server. */
export const securityHeaders = {
  "Content-Security-Policy": `${policy("'self'", "'self'")}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cache-Control": "no-store",
};
