// Where the browser forbids site data, reading localStorage throws and the program would end at its start:
// then a store in memory takes its place, and nothing is kept after the page closes.
(() => {
  try { localStorage.length; } catch {
    const m = new Map();
    Object.defineProperty(window, "localStorage", { value: {
      get length() { return m.size; }, key: i => [...m.keys()][i] ?? null, clear: () => m.clear(),
      getItem: k => m.get(String(k)) ?? null, setItem: (k, v) => { m.set(String(k), String(v)); }, removeItem: k => { m.delete(String(k)); },
    } });
  }
})();
