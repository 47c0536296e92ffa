/** What the content security policy has to say of each of these, whatever else it says. */
export const POLICY: Readonly<Record<string, string>> = {
  'default-src': "'self'",
  'script-src': "'self'",
  'script-src-attr': "'none'",
  'style-src': "'self'",
  'style-src-attr': "'none'",
  'object-src': "'none'",
  'frame-ancestors': "'none'",
  'base-uri': "'none'",
  'form-action': "'self'",
};

/** The rules of a content security policy: what may come from where. */
export const policyOf = (header: string | null | undefined): ReadonlyMap<string, string> =>
  new Map(
    (header ?? '').split(';').map((rule) => {
      const [name = '', ...sources] = rule.trim().split(' ');
      return [name, sources.join(' ')];
    }),
  );
