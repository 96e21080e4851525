/** What the app may do, said once: the build puts it into the page, the server sends it with every answer. */

/** Everything comes from the place the app is served from; nothing is inline, nothing is evaluated. */
export const contentSecurityPolicy = [
  "default-src 'self'",
  // The recogniser compiles its one hot sum to WebAssembly; that word allows nothing else.
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  // The practice recording is played from memory, so that it works offline and can be sought.
  "media-src 'self' blob:",
  "worker-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** Sent with every file. A frame of another page could catch touches; a meta tag cannot forbid it, a header can. */
export const headers = {
  "Content-Security-Policy": `${contentSecurityPolicy}; frame-ancestors 'none'`,
  "Permissions-Policy": "camera=(self), geolocation=(), microphone=(self), screen-wake-lock=(self)",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
  "Cross-Origin-Opener-Policy": "same-origin",
};
