export const voidTexts = {
  void: 'Void',
  reason: 'Why it does not count',
  readingsCount: 'The ring readings still count',
  yes: 'Void the run',
  leave: 'Leave it',
  notVoided: 'Not voided',
};
