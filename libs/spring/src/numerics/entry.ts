/** Element of a list that the caller knows to exist. */
export function entry<T>(list: readonly T[], index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no element ${index} in ${list.length}`);
  return value;
}
