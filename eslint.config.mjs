import ts from 'typescript';
import tseslint from 'typescript-eslint';

/** Methods that look for their first argument, or remember something by it. */
const LOOKS_FOR = new Set(
  'includes indexOf lastIndexOf startsWith endsWith localeCompare search match matchAll split has get set add delete test exec'.split(
    ' ',
  ),
);
const COMPARES = new Set(['===', '!==', '==', '!=', '<', '>', '<=', '>=']);
const BY_KEY = new Set(['Set', 'Map', 'WeakMap', 'WeakSet']);

/** True for the branded type of src/model/sentence.ts, and for a union or type parameter that can hold it. */
function holdsSentence(checker, type) {
  const constraint =
    type.flags & ts.TypeFlags.TypeParameter ? checker.getBaseConstraintOfType(type) : undefined;
  const of = constraint ?? type;
  if (of.isUnion()) return of.types.some((member) => holdsSentence(checker, member));
  return (
    of.isIntersection() &&
    of.types.some((member) =>
      member.symbol?.declarations?.some((d) => d.getSourceFile().fileName.endsWith('/src/model/sentence.ts')),
    )
  );
}

/** Nothing is decided by a sentence: outside words/ and output/ none is compared, searched, cut or made by a cast. */
const noLookInside = {
  meta: {
    type: 'problem',
    messages: {
      look: 'A sentence is for people: decide by the code and the values of its reason or message.',
      cast: 'Sentences are made in src/words/ alone.',
    },
    schema: [{ enum: ['all', 'casts'] }],
  },
  create(context) {
    const services = context.sourceCode.parserServices;
    const checker = services.program.getTypeChecker();
    const isSentence = (node) => holdsSentence(checker, services.getTypeAtLocation(node));
    const refuse = (node, at = node) => {
      if (isSentence(node)) context.report({ node: at, messageId: 'look' });
    };
    const cast = (node) => {
      if (isSentence(node) && !isSentence(node.expression)) context.report({ node, messageId: 'cast' });
    };
    const casts = { TSAsExpression: cast, TSTypeAssertion: cast };
    if (context.options[0] === 'casts') return casts;
    const test = ({ test: of }) => of && refuse(of);
    return {
      ...casts,
      BinaryExpression({ operator, left, right }) {
        if (!COMPARES.has(operator)) return;
        const side = [left, right].find(isSentence);
        if (side) refuse(side);
      },
      // Whether it is empty is a look as well.
      LogicalExpression: ({ operator, left }) => operator !== '??' && refuse(left),
      UnaryExpression: ({ operator, argument }) => operator === '!' && refuse(argument),
      ConditionalExpression: test,
      IfStatement: test,
      WhileStatement: test,
      SwitchStatement: ({ discriminant }) => refuse(discriminant),
      SwitchCase: test,
      MemberExpression(node) {
        refuse(node.object, node);
        if (node.computed) refuse(node.property);
      },
      Property: ({ computed, key }) => computed && refuse(key),
      CallExpression({ callee, arguments: [first] }) {
        if (callee.type === 'MemberExpression' && first && LOOKS_FOR.has(callee.property.name)) refuse(first);
      },
      NewExpression(node) {
        if (!BY_KEY.has(node.callee.name)) return;
        const [key] = checker.getTypeArguments(services.getTypeAtLocation(node));
        if (key && holdsSentence(checker, key)) context.report({ node, messageId: 'look' });
      },
      SpreadElement: ({ argument }) => refuse(argument),
      ForOfStatement: ({ right }) => refuse(right),
      VariableDeclarator: ({ id, init }) => init && id.type.endsWith('Pattern') && refuse(init),
    };
  },
};

const shuntbook = { rules: { 'no-look-inside': noLookInside } };

export default tseslint.config(
  { ignores: ['dist/**', 'out/**', 'node_modules/**', '.stryker-tmp/**', 'reports/**'] },
  ...tseslint.configs.strictTypeChecked.map((c) => ({ ...c, files: ['**/*.ts'] })),
  {
    files: ['**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
        { selector: 'ExportAllDeclaration', message: 'No barrel files but src/index.ts.' },
      ],
    },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/words/**', 'src/output/**'],
    plugins: { shuntbook },
    rules: { 'shuntbook/no-look-inside': 'error' },
  },
  {
    files: ['src/output/**/*.ts'],
    plugins: { shuntbook },
    rules: { 'shuntbook/no-look-inside': ['error', 'casts'] },
  },
  { files: ['*.config.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['src/index.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['tests/**/*.ts'], rules: { 'max-lines': 'off' } },
);
