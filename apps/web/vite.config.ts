import { readdirSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { serviceWorker } from './service-worker-plugin.ts';

// Workspace packages by path, so that a copied tree builds its own copy and not the original behind node_modules' links.
const alias = readdirSync(new URL('../../packages', import.meta.url)).map((name) => ({
  find: new RegExp(`^@twelvemonth/${name}$`),
  replacement: new URL(`../../packages/${name}/src/index.ts`, import.meta.url).pathname,
}));

export default defineConfig({
  plugins: [react(), serviceWorker()],
  resolve: { alias },
  build: {
    target: 'es2023',
    // Our packages are pure: a module of which nothing is used can be left out.
    rolldownOptions: { treeshake: { moduleSideEffects: [{ test: /\/packages\/[a-z]+\/src\//, sideEffects: false }] } },
  },
});
