import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['**/dist/**', '**/node_modules/**', '.cache/**', '.data/**', '**/generated/**', '**/*.d.ts'] },
  ...tseslint.configs.strict,
  {
    languageOptions: { ecmaVersion: 2023, sourceType: 'module' },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      // Nest modules are classes that carry only their decorator.
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true, allowEmpty: true }],
      // `== null` means null or undefined, which is what an optional nullable field of a message can be.
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'max-lines': ['error', { max: 320, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
      'prefer-const': 'error',
    },
  },
  {
    // Nest finds what to inject by the types of constructor arguments, which must be imported as values.
    files: ['apps/api/**'],
    languageOptions: { parserOptions: { emitDecoratorMetadata: true, experimentalDecorators: true } },
  },
  {
    // A migration is one list of statements, however long.
    files: ['**/migrations/*.ts'],
    rules: { 'max-lines': 'off' },
  },
  {
    // Command-line scripts talk to a terminal; tests may be as long as their table of cases.
    files: ['**/scripts/**', 'tests/**', '**/*.test.ts'],
    rules: { 'no-console': 'off', 'max-lines': 'off' },
  },
);
