/** Where a figure comes from, as a choice in a form. */
export const SOURCE_CHOICES = [
  { value: 'measured', label: 'measured' },
  { value: 'entered', label: 'from papers' },
  { value: 'assumed', label: 'assumed' },
] as const;
