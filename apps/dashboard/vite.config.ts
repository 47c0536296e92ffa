import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Where `npm start` serves the API; the development server hands its calls on. */
const API_ADDRESS = 'http://127.0.0.1:4750';

export default defineConfig({
  plugins: [react()],
  base: '/',
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  build: { outDir: 'dist', target: 'es2023', sourcemap: false },
  server: { proxy: { '/api': API_ADDRESS } },
});
