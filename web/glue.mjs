import * as maplibregl from './maplibre/maplibre-gl.mjs';
globalThis.maplibregl = maplibregl;
globalThis.dispatchEvent(new Event('maplibre-ready'));
