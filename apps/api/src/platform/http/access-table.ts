import type { OpenAPIObject } from '@nestjs/swagger';
import { type Callers, EXTENSION, type TokenScopeName } from './access.js';
import { METHODS } from './open-api-conventions.js';
import { ROLES } from './scope.js';

const INTRODUCTION = `# Who may call what

Made from the code by \`node apps/api/dist/write-open-api.js apps/api/openapi.json\`; a test holds it against the code, and
another calls every route as everybody and compares the answers with this page.

- **Roles** are those in the team that the path names. Whoever is not in that team gets 404, as for a team that does not
  exist; a member in another role gets 403. A rider reads and writes what is their own: another rider's bike, set-up,
  run, decision, plan or body mass is to them as one that does not exist. Tracks with their sessions, spring units and the
  list of members are the whole team's.
- **Signed in**: any account, whatever teams it is in. Without a sign-in the answer is 401.
- **Anybody**: no sign-in is asked for.
- **Token**: the scope that an API token needs. It acts for its maker, in the maker's role, in its own team only.
  Without an entry no token may; the answer is then 403.

The OpenAPI document says the same of each route, as \`${EXTENSION.callers}\` and \`${EXTENSION.tokenScope}\`. The document itself,
\`GET /openapi.json\`, and the files of the dashboard are for anybody; they hold no data.
`;

interface Declared {
  readonly [EXTENSION.callers]: Callers;
  readonly [EXTENSION.tokenScope]?: TokenScopeName;
}

/** The page `docs/access.md`: every route of `document` with who may call it, in Markdown. */
export function accessTable(document: OpenAPIObject): string {
  const rows = Object.entries(document.paths).flatMap(([path, item]) =>
    METHODS.filter((method) => item[method]).map((method) => {
      const declared = item[method] as unknown as Declared;
      const route = `\`${method.toUpperCase()} ${path.replace('/api/v1', '')}\``;
      return row([route, ...callersOf(declared), declared[EXTENSION.tokenScope] ?? '']);
    }),
  );
  const columns = ['route, below `/api/v1`', ...ROLES, 'signed in', 'anybody', 'token'];
  return [INTRODUCTION, row(columns), row(columns.map(() => '---')), ...rows, ''].join('\n');
}

const callersOf = ({ [EXTENSION.callers]: callers }: Declared): string[] =>
  [...ROLES, 'account', 'stranger'].map((who) => (callers.some((caller) => caller === who) ? 'yes' : ''));

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
