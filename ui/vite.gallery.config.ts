/** Builds the gallery for the tests of the pages (`pages/`). It is never part of the app. */
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

export default defineConfig({
  plugins: [svelte()],
  build: { target: "es2022", outDir: "dist-gallery", emptyOutDir: true, rolldownOptions: { input: { gallery: "gallery.html" } } },
});
