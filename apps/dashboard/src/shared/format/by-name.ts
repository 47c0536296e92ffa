/** Things in the order in which a person looks for a name: Fork 2 before Fork 10. */
export function byName<Thing extends { readonly name: string }>(things: readonly Thing[]): Thing[] {
  return [...things].sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
}
