import { getMetadataStorage } from 'class-validator';

type Search = ReturnType<typeof getMetadataStorage>['getTargetValidationMetadatas'];
type Rules = ReturnType<Search>;

/**
 * Lets class-validator remember the rules of a class. It gathers them from those of all classes, anew for every
 * message, though they stay as they are once the code is loaded; on a small read that took longer than the check.
 */
export function rememberValidationRules(): void {
  const storage = getMetadataStorage();
  const search: Search = storage.getTargetValidationMetadatas.bind(storage);
  const known = new Map<unknown, Rules>();
  storage.getTargetValidationMetadatas = (target, schema, always, strictGroups, groups) => {
    // Groups and schemas are not in use here; if somebody begins to use them, they are searched as ever.
    if (schema || groups?.length) return search(target, schema, always, strictGroups, groups);
    const rules = known.get(target) ?? search(target, schema, always, strictGroups, groups);
    known.set(target, rules);
    return rules;
  };
}
