import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const RULE = 'shuntbook/no-look-inside';
const HEAD = [
  "import type { Sentence } from '../model/sentence.js';",
  "import { told } from '../words/messages/told.js';",
  "import { say } from '../words/reasons/say.js';",
  'declare const because: Sentence, other: Sentence, maybe: Sentence | undefined, text: string;',
  'declare const sentences: readonly Sentence[], plain: readonly string[], byText: Map<string, string>;',
  'declare const item: { code: string; values: object }, table: Record<string, string>;',
];

const COMPARISONS = [
  "export const a1 = because === 'the list says so';",
  "export const a2 = told(item).message !== 'x';",
  'export const a3 = because < other;',
  "export const a4 = maybe == 'x';",
  "export function a5(): number { switch (because) { case 'x': return 1; default: return 0; } }",
  'export function a6(): number { switch (text) { case because: return 1; default: return 0; } }',
  "export const a7 = because ? 'said' : 'unsaid';",
  "export const a8 = because || 'nothing';",
  "export const a9 = !because && text !== '';",
];
const METHODS = [
  "export const b1 = because.startsWith('its grounding');",
  "export const b2 = maybe?.includes('the list');",
  "export const b3 = say('x').replace('a', 'b');",
  'export const b4 = because.length;',
  'export const b5 = because[0];',
  'export const b6 = /^the list /.test(because);',
  'export const b7 = /(.*): /.exec(told(item).hint);',
  'export const b8 = text.includes(because);',
  'export const b9 = [...because];',
  'export const { length: b10 } = because;',
  'export function b11(): void { for (const letter of because) console.log(letter); }',
];
const KEYS = [
  'export const c1 = sentences.includes(other);',
  'export const c2 = plain.indexOf(because);',
  'export const c3 = new Set(sentences);',
  'export const c4 = byText.get(because);',
  "export const c5 = byText.set(because, '');",
  'export const c6 = table[because];',
  "export const c7 = { [because]: 'x' };",
  'export const c8 = new Map([[because, 1]]);',
  'export const c9 = sentences.filter((s) => plain.includes(s));',
];
const CASTS = [
  "export const d1 = 'made here' as Sentence;",
  'export const d2 = <Sentence>text;',
  "export const d3 = ['x'] as unknown as Sentence | undefined;",
];
const ALLOWED = [
  'export const e1 = `${because} (${text})`;',
  "export const e2 = sentences.join(' ');",
  'export const e3 = { because: say(because), hint: told(item).hint };',
  "export const e4 = maybe ?? 'nothing';",
  "export const e5 = text === 'x' || text.startsWith('y') || plain.includes(text);",
  'export const e6 = byText.set(text, because);',
  'export const e7: string = because;',
  'export const e8 = sentences.length + sentences.map((s) => `${s}.`).length;',
  'export const e9 = because as Sentence;',
  "export const e10 = item.code === 'choose/none-fits' && told(item);",
  'export const e11: Sentence[] = [...sentences, because];',
];
const ALL = [...COMPARISONS, ...METHODS, ...KEYS, ...CASTS];

/** Samples by the file that each stands for: no such file is there, but the configuration goes by the name. */
const SAMPLES: Readonly<Record<string, readonly string[]>> = {
  'src/screen/sample.ts': [...ALL, ...ALLOWED],
  'src/documents/sample.ts': [...ALL, ...ALLOWED],
  'src/batch/sample.ts': [...ALL, ...ALLOWED],
  'src/plan/sample.ts': [...ALL, ...ALLOWED],
  'src/words/sample.ts': ALL,
  'src/output/sample.ts': ALL,
};

const textOf = (lines: readonly string[]): string => [...HEAD, ...lines].join('\n');

/** The samples and what they import, compiled as the project is, and nothing else of it. */
function samples(): ts.Program {
  const { config } = ts.readConfigFile(join(ROOT, 'tsconfig.json'), (path) => ts.sys.readFile(path)) as {
    config: { compilerOptions: object };
  };
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, ROOT);
  const texts = new Map(
    Object.entries(SAMPLES).map(([file, lines]) => [join(ROOT, file), textOf(lines)] as const),
  );
  const host = ts.createCompilerHost(options, true);
  const read = host.readFile.bind(host);
  const exists = host.fileExists.bind(host);
  const parse = host.getSourceFile.bind(host);
  host.readFile = (path) => texts.get(path) ?? read(path);
  host.fileExists = (path) => texts.has(path) || exists(path);
  host.getSourceFile = (path, version, ...more) => {
    const text = texts.get(path);
    return text === undefined ? parse(path, version, ...more) : ts.createSourceFile(path, text, version);
  };
  return ts.createProgram([...texts.keys()], options, host);
}

const program = samples();
// The other rules hold elsewhere: of the configuration this one alone is carried out.
const eslint = new ESLint({
  cwd: ROOT,
  ruleFilter: ({ ruleId }) => ruleId === RULE,
  overrideConfig: { languageOptions: { parserOptions: { projectService: false, programs: [program] } } },
});

/** The lines of a sample that the rule refuses. */
async function refused(file: string): Promise<string[]> {
  const lines = SAMPLES[file] ?? [];
  const [result] = await eslint.lintText(textOf(lines), { filePath: join(ROOT, file) });
  const messages = result?.messages ?? [];
  expect(messages.filter((m) => m.fatal === true)).toEqual([]);
  const numbers = new Set(messages.filter((m) => m.ruleId === RULE).map((m) => m.line - HEAD.length - 1));
  return lines.filter((_, index) => numbers.has(index));
}

describe('the rule that no code looks into a sentence', () => {
  it('refuses comparisons, methods, keys and casts, and nothing that only hands a sentence on', async () => {
    expect(await refused('src/screen/sample.ts')).toEqual(ALL);
  });

  it('holds in every room outside words/ and output/', async () => {
    for (const room of ['documents', 'batch', 'plan'])
      expect(await refused(`src/${room}/sample.ts`), room).toEqual(ALL);
  });

  it('lets words/ make sentences and take them apart', async () => {
    expect(await refused('src/words/sample.ts')).toEqual([]);
  });

  it('lets output/ compare what it writes, but make no sentence', async () => {
    expect(await refused('src/output/sample.ts')).toEqual(CASTS);
  });
});
