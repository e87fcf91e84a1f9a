/**
 * Builds the service worker after the screens, so that it knows their files by name; its own name never changes. Their names lie
 * beside it, for a browser that takes no service worker.
 */
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Plugin, build } from 'vite';

export function serviceWorker(): Plugin {
  let files: readonly string[] = [];
  return {
    name: 'service-worker',
    apply: 'build',
    writeBundle: (_, bundle) => {
      files = [
        '/',
        '/mark.svg',
        ...Object.keys(bundle)
          .filter((name) => name !== 'index.html')
          .map((name) => `/${name}`),
      ];
      writeFileSync(new URL('dist/screen-files.json', import.meta.url), JSON.stringify(files));
    },
    async closeBundle() {
      await build({
        configFile: false,
        logLevel: 'warn',
        publicDir: false,
        define: {
          screenFiles: JSON.stringify(files),
          screensName: JSON.stringify(
            `screens-${createHash('sha256').update(files.join()).digest('hex').slice(0, 12)}`,
          ),
        },
        build: {
          outDir: fileURLToPath(new URL('dist', import.meta.url)),
          emptyOutDir: false,
          target: 'es2023',
          lib: {
            entry: fileURLToPath(new URL('src/offline/service-worker.ts', import.meta.url)),
            formats: ['iife'],
            name: 'worker',
            fileName: () => 'sw.js',
          },
        },
      });
    },
  };
}
