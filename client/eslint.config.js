import eslint from '@eslint/js';
import a11y from 'eslint-plugin-jsx-a11y';
import hooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const desks = ['front-desk', 'instructor', 'client', 'owner', 'plans', 'letters'];

/** Imports point one way, written with `@/` so that a wrong one shows; `./` stays inside a folder. */
const closed = (files, banned) => ({
  files,
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          { group: ['../*'], message: 'Import across folders with @/.' },
          { group: banned, message: 'components and api ← features ← app; desks never meet.' },
        ],
      },
    ],
  },
});

export default tseslint.config(
  { ignores: ['dist', 'src/api/schema.d.ts'] },
  eslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    extends: [
      tseslint.configs.strictTypeChecked,
      tseslint.configs.stylisticTypeChecked,
      hooks.configs.flat['recommended-latest'],
      a11y.flatConfigs.strict,
    ],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
      // What scrolls must be reachable by keyboard.
      'jsx-a11y/no-noninteractive-tabindex': ['error', { roles: ['region'], tags: [] }],
      '@typescript-eslint/consistent-type-definitions': ['error', 'interface'],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/only-throw-error': ['error', { allow: ['Redirect'] }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-misused-promises': [
        'error',
        { checksVoidReturn: { attributes: false } },
      ],
    },
  },
  closed(['src/api/**'], ['@/app/*', '@/features/*', '@/components/*']),
  closed(['src/components/**'], ['@/app/*', '@/features/*']),
  ...desks.map((desk) =>
    closed(
      [`src/features/${desk}/**`],
      [
        '@/app/*',
        ...desks.filter((other) => other !== desk).map((other) => `@/features/${other}/*`),
      ],
    ),
  ),
);
