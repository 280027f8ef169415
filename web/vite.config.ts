import { defineConfig } from "vite";

// Names without hashes: the built page is kept with the sources, and is served by this machine to itself.
export default defineConfig({
  base: "./",
  publicDir: false,
  build: {
    outDir: "../python/lineproof/desk/page",
    emptyOutDir: true,
    target: "es2022",
    modulePreload: false,
    rollupOptions: {
      input: { desk: "index.html", "lesson-board": "src/board/lesson-board.ts" },
      preserveEntrySignatures: "allow-extension",
      output: {
        entryFileNames: "assets/[name].js",
        chunkFileNames: "assets/[name].js",
        assetFileNames: "assets/[name][extname]",
      },
    },
  },
});
