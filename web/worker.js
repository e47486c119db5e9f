// The planner off the page's thread: the same program as the page's, started without a document.
importScripts("/wasm_exec.js");
(async () => {
  const go = new Go();
  const { instance } = await WebAssembly.instantiateStreaming(fetch("/web/app.wasm"), go.importObject);
  await go.run(instance);
  throw new Error("the planner ended");
})().catch(e => postMessage(String(e)));
