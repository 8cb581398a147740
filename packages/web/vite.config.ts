import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

const api = process.env.CASTWRIGHT_API ?? 'http://127.0.0.1:4870'

export default defineConfig({
  plugins: [
    react(),
    VitePWA({
      strategies: 'generateSW',
      registerType: 'prompt',
      injectRegister: null,
      manifest: {
        name: 'Castwright',
        short_name: 'Castwright',
        description: 'Plan, check, record and prove the making of precast concrete panels.',
        lang: 'en',
        dir: 'ltr',
        id: '/',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        background_color: '#f4f1ea',
        theme_color: '#fffdf8',
        icons: [
          { src: '/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          { src: '/icon-mask-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,woff2,wasm,png,svg,webmanifest}'],
        maximumFileSizeToCacheInBytes: 12 * 1024 * 1024,
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//],
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        runtimeCaching: [
          {
            // Photos are named by their hash, so what is cached cannot be out of date.
            urlPattern: /\/api\/files\/[0-9a-f]{64}$/,
            handler: 'CacheFirst',
            options: { cacheName: 'files', expiration: { maxEntries: 400 } },
          },
        ],
      },
    }),
  ],
  build: {
    // Beside what the type checker writes into dist, which a build would empty.
    outDir: 'dist/app',
    emptyOutDir: true,
    target: 'es2022',
    // Fonts and icons stay files: the server's content policy allows no data: fonts.
    assetsInlineLimit: 0,
    sourcemap: false,
  },
  worker: { format: 'es' },
  server: { proxy: { '/api': api } },
})
