import { defineConfig } from "vite";

// The script of the published page: one file, which `publish` puts into the page itself.
export default defineConfig({
  base: "./",
  publicDir: false,
  build: {
    outDir: "../python/lineproof/publish/page",
    emptyOutDir: false,
    target: "es2022",
    modulePreload: false,
    rollupOptions: {
      input: { "lesson-page": "src/page/lesson-page.ts" },
      output: { entryFileNames: "[name].js" },
    },
  },
});
