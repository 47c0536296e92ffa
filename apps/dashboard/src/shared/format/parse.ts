/** The number in a text field: comma or point, any spaces; null where it is empty, NaN where it is no number. */
export function parseNumber(text: string): number | null {
  const plain = text.replaceAll(/\s/g, '').replace(',', '.').replace('−', '-');
  if (plain === '') return null;
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

/** A stored number as the text of a field; nothing where it is not known. */
export function numberText(value: number | null | undefined, decimals = 3): string {
  return value === null || value === undefined ? '' : Number(value.toFixed(decimals)).toString();
}
