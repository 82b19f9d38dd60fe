// Who may import whom: the table of DEVELOPERS.md, held by `npm run check:imports`.
const rooms = {
  model: [],
  words: ['model'],
  screen: ['model', 'words'],
  electrical: ['model'],
  rules: ['model', 'electrical'],
  read: ['model', 'words'],
  site: ['model', 'words'],
  plan: ['model', 'electrical', 'rules', 'site'],
  range: ['model', 'electrical', 'rules', 'site', 'plan'],
  register: ['model'],
  record: ['model', 'words', 'site-forms', 'register'],
  'site-forms': ['model', 'words'],
  fonts: [],
  documents: ['model', 'words', 'site-forms', 'fonts'],
  print: ['model', 'words', 'fonts'],
  output: ['model', 'words', 'site-forms'],
  batch: [
    'model',
    'words',
    'screen',
    'electrical',
    'rules',
    'read',
    'site',
    'plan',
    'range',
    'site-forms',
    'documents',
    'print',
    'output',
    'register',
    'record',
  ],
};

/** Folders of a room in the order in which its work goes on: each may import itself and those before it, never a later one. */
const steps = {
  plan: ['context', 'place', 'rate', 'choose', 'reach', 'make', 'standing', 'items'],
  read: ['file', 'cell', 'table', 'company', 'answers', 'record', 'list'],
};

/** Folders of a room that don't know each other, and what all of them share. */
const apart = {
  documents: {
    folders: ['closeout-pack', 'permit-sheet', 'permit-appendix', 'owner-sheet', 'labels', 'site-record'],
    shared: ['parts', 'drawing'],
  },
};

const fence = (name, comment, from, may) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { path: '^src/', pathNot: may },
});
const roomFences = Object.entries(rooms).map(([room, may]) =>
  fence(
    `room-${room}`,
    `src/${room} may import ${may.length ? may.join(', ') : 'no other room'}.`,
    `^src/${room}/`,
    `^src/(${[room, ...may].join('|')})/`,
  ),
);
const stepFences = Object.entries(steps).flatMap(([room, folders]) =>
  folders.map((folder, i) => ({
    name: `step-${room}-${folder}`,
    comment: `src/${room}/${folder} may import itself and ${i ? folders.slice(0, i).join(', ') : 'no other step'}.`,
    severity: 'error',
    from: { path: `^src/${room}/${folder}/` },
    to: { path: `^src/${room}/`, pathNot: `^src/${room}/(${folders.slice(0, i + 1).join('|')})/` },
  })),
);
const apartFences = Object.entries(apart).flatMap(([room, { folders, shared }]) =>
  [...folders.map((f) => [f, ...shared]), shared].map((may) => ({
    name: `apart-${room}-${may[0]}`,
    comment: `src/${room}/${may[0]} may import ${may.join(', ')}.`,
    severity: 'error',
    from: { path: `^src/${room}/${may === shared ? `(${shared.join('|')})` : may[0]}/` },
    to: { path: `^src/${room}/`, pathNot: `^src/${room}/(${may.join('|')})/` },
  })),
);

module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    ...roomFences,
    ...stepFences,
    ...apartFences,
    {
      name: 'commands',
      comment:
        'Commands and cli.ts use the one export, of the batch its one function, the screen, words and the kinds of messages, nothing else.',
      severity: 'error',
      from: { path: '^src/(commands/|cli\\.ts$)' },
      to: {
        path: '^src/',
        pathNot: '^src/(index\\.ts$|batch/run-batch\\.ts$|screen/|words/|model/messages?[./]|commands/)',
      },
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
