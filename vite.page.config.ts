// How the page is made into static files: apart from the settings of the tests, which have another root.
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/doors/web',
  base: '/',
  publicDir: false,
  plugins: [react()],
  // Vite would otherwise look for settings of style sheets above its root.
  css: { postcss: { plugins: [] } },
  build: {
    outDir: '../../../dist/web',
    emptyOutDir: true,
    target: 'es2023',
    // A file inlined as data: would need a wider Content-Security-Policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 600,
    rolldownOptions: {
      // Rooms of the core only declare: what the page does not use of them is left out.
      treeshake: { moduleSideEffects: (id: string) => !/\/src\/(papers|ground|desk)\//.test(id) },
    },
  },
});
