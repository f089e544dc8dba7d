import { defineConfig } from 'eslint/config';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const heatOnly = 'physics/ is pure computation: it may import only itself and general libraries';

export default defineConfig(
  { ignores: ['dist/', 'coverage/', 'node_modules/'] },
  tseslint.configs.strictTypeChecked,
  tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // Grids are walked by index: inside the loops the index is known to be valid.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  {
    files: ['physics/**/*.ts'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['**/main/**', '**/renderer/**', 'electron', 'react*', 'plotly.js*', 'node:*'],
              message: heatOnly,
            },
          ],
        },
      ],
      'no-restricted-globals': ['error', 'Date', 'performance', 'crypto'],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'take a seeded generator' },
      ],
    },
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    extends: [reactHooks.configs.flat.recommended],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          patterns: [
            { regex: 'main/(?!bridge\\.ts$)', message: 'of main/ the window may know only the bridge' },
            {
              regex: 'main/bridge\\.ts$',
              allowTypeImports: true,
              message: 'of the bridge the window may import types only',
            },
            { group: ['electron', 'node:*'], message: 'the window runs in a browser' },
          ],
        },
      ],
    },
  },
  { files: ['**/*.js', '**/*.mjs'], extends: [tseslint.configs.disableTypeChecked] },
);
