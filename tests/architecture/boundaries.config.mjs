/** The arrows of the house: which folder may know which. Run by `npm run check:boundaries`. */
const layer = (name, from, to, comment) => ({
  name,
  severity: 'error',
  comment,
  from: { path: from },
  to: { path: to },
});

export default {
  forbidden: [
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'A cycle means two files are one.',
      from: {},
      to: { circular: true },
    },
    layer('libraries-know-no-application', '^libs/', '^apps/', 'Libraries are pure.'),
    layer('api-knows-no-dashboard', '^apps/api/', '^apps/dashboard/', 'They meet in the OpenAPI document.'),
    layer('dashboard-knows-no-api', '^apps/dashboard/', '^apps/api/', 'They meet in the OpenAPI document.'),
    layer('spring-knows-no-evidence', '^libs/spring/', '^libs/evidence/', 'The API composes the two.'),
    layer(
      'evidence-knows-no-spring',
      '^libs/evidence/',
      '^libs/spring/',
      'It gets conversions as numbers or functions.',
    ),
    layer(
      'dashboard-computes-no-evidence',
      '^apps/dashboard/',
      '^libs/evidence/',
      'Evidence is computed by the API.',
    ),
    layer('units-at-the-bottom', '^libs/units/', '^libs/(spring|evidence)/', 'Everything stands on units.'),
    layer(
      'numerics-at-the-bottom',
      '^libs/spring/src/numerics/',
      '^libs/spring/src/(gas|unit|frame|questions)/',
      'numerics <- gas <- unit <- frame <- questions',
    ),
    layer(
      'gas-below-unit',
      '^libs/spring/src/gas/',
      '^libs/spring/src/(unit|frame|questions)/',
      'numerics <- gas <- unit <- frame <- questions',
    ),
    layer(
      'unit-below-frame',
      '^libs/spring/src/unit/',
      '^libs/spring/src/(frame|questions)/',
      'numerics <- gas <- unit <- frame <- questions',
    ),
    layer(
      'frame-below-questions',
      '^libs/spring/src/frame/',
      '^libs/spring/src/questions/',
      'numerics <- gas <- unit <- frame <- questions',
    ),
    layer(
      'advice-knows-no-truth',
      '^tests/simulator/advice/',
      '^tests/simulator/(truth/|streams)|^apps/api/src/demo/|^node:',
      'Who advises simulated teams sees what was written down, and draws nothing.',
    ),
    layer(
      'truth-knows-no-advice',
      '^tests/simulator/truth/',
      '^tests/simulator/advice/',
      'What is true does not depend on who advises.',
    ),
    {
      name: 'libraries-use-no-platform',
      severity: 'error',
      comment: 'No I/O, no clock, no framework in a library.',
      from: { path: '^libs/', pathNot: '[.]test[.]ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'modules-reach-no-foreign-storage',
      severity: 'error',
      comment: 'A module uses what another exports, never its entity or its queries.',
      from: { path: '^apps/api/src/modules/([^/]+)/' },
      to: {
        path: '^apps/api/src/modules/[^/]+/.*[.](entity|queries)[.]ts$',
        pathNot: '^apps/api/src/modules/$1/',
      },
    },
    {
      name: 'features-know-no-feature',
      severity: 'error',
      comment: 'A route combines features.',
      from: { path: '^apps/dashboard/src/features/([^/]+)/' },
      to: { path: '^apps/dashboard/src/features/', pathNot: '^apps/dashboard/src/features/$1/' },
    },
    {
      name: 'shared-knows-no-feature',
      severity: 'error',
      from: { path: '^apps/dashboard/src/shared/' },
      to: { path: '^apps/dashboard/src/(features|app)/' },
    },
    {
      name: 'orm-only-in-storage',
      severity: 'error',
      comment: 'Services never see the ORM.',
      from: {
        path: '^apps/api/src/',
        pathNot: '([.](entity|queries)[.]ts$|^apps/api/src/platform/database/)',
      },
      to: { path: 'node_modules/typeorm' },
    },
  ],
  options: {
    tsConfig: { fileName: 'tests/tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['source', 'import', 'node', 'default'],
    },
  },
};
