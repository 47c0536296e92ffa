/** Version of the engine's results: raised whenever any result changes, stored with every number derived from it. */
export const ENGINE_VERSION = '1.0.0';
