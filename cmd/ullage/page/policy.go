package page

// policy is the Content-Security-Policy of the page: nothing from elsewhere,
// no inline style or script.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
	"connect-src 'self'; worker-src 'self'; manifest-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'"
