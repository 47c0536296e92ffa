/** Injection token of the parsed configuration. */
export const CONFIG = Symbol('configuration');
