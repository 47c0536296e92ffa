import type { Plugin, Rolldown } from 'vite';

const ENTRY = 'src/app/start/early-reads.ts';
const NAME = 'early-reads';

/** Names the first script before all others, with what it is made of; it must wait for nothing else. */
export const earlyScript = (): Plugin => ({
  name: 'early-script',
  apply: 'build',
  config: () => ({ build: { rolldownOptions: { input: { index: 'index.html', [NAME]: ENTRY } } } }),
  transformIndexHtml: {
    order: 'post',
    handler(_, { bundle = {} }) {
      const script = Object.values(bundle).find(isEarly);
      if (script === undefined) throw new Error(`${ENTRY} was not built.`);
      return [
        {
          tag: 'script',
          attrs: { type: 'module', async: true, crossorigin: true, src: `/${script.fileName}` },
          injectTo: 'head-prepend',
        },
        ...script.imports.map((part) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', crossorigin: true, href: `/${part}` },
          injectTo: 'head-prepend' as const,
        })),
      ];
    },
  },
});

const isEarly = (part: Rolldown.OutputAsset | Rolldown.OutputChunk): part is Rolldown.OutputChunk =>
  part.type === 'chunk' && part.isEntry && part.name === NAME;
