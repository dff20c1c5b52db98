import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

// The gallery is opened only by `npm run dev`; it is no input of the build, so it is not shipped.
export default defineConfig({
  plugins: [svelte()],
  // The windows are served from the app's own root and may load nothing from data: but images.
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The licences of what is bundled, for whoever packs the app.
    license: { fileName: "licences.md" },
    rolldownOptions: { input: { step: "step.html", bay: "bay.html", review: "review.html" } },
  },
  // The gallery reads the English labels from the crate that owns the words.
  server: { port: 5173, strictPort: true, fs: { allow: [".."] } },
  resolve: process.env.VITEST ? { conditions: ["browser"] } : {},
  test: { environment: "happy-dom", include: ["tests/**/*.test.ts"] },
});
