// Who may import whom: the table of DEVELOPERS.md, held by `npm run check:imports`.
const rooms = {
  model: [],
  text: ['model'],
  electrical: ['model', 'text'],
  rules: ['model', 'text', 'electrical'],
  read: ['model', 'text'],
  site: ['model', 'text'],
  plan: ['model', 'text', 'electrical', 'rules', 'site'],
  documents: ['model', 'text'],
  print: ['model', 'text'],
  output: ['model', 'text'],
  batch: ['model', 'text', 'electrical', 'rules', 'read', 'site', 'plan', 'documents', 'print', 'output'],
};
const fence = Object.entries(rooms).map(([room, may]) => ({
  name: `room-${room}`,
  comment: `src/${room} may import ${may.length ? may.join(', ') : 'no other room'}.`,
  severity: 'error',
  from: { path: `^src/${room}/` },
  to: { path: '^src/', pathNot: `^src/(${[room, ...may].join('|')})/` },
}));
module.exports = {
  forbidden: [
    {
      name: 'no-circle',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    ...fence,
    {
      name: 'commands',
      comment: 'Commands and cli.ts use the one export and text, nothing else.',
      severity: 'error',
      from: { path: '^src/(commands/|cli\\.ts$)' },
      to: { path: '^src/', pathNot: '^src/(index\\.ts$|text/|commands/)' },
    },
    {
      name: 'no-rule-sees-another',
      comment: 'A rule never sees another rule.',
      severity: 'error',
      from: { path: '^src/rules/(place|rate|wire|indicate)/' },
      to: { path: '^src/rules/(place|rate|wire|indicate)/' },
    },
    {
      name: 'no-dev-dependency',
      severity: 'error',
      from: { path: '^src' },
      to: { dependencyTypes: ['npm-dev'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
