import { createHmac } from 'node:crypto';
import { isIP } from 'node:net';

/** Everything the process takes from its environment, parsed once at start. */
export interface Config {
  readonly host: string;
  readonly port: number;
  /** Connection of the schema's owner: for migrations and the demo team. What serves is better off without. */
  readonly ownerDatabaseUrl: string | undefined;
  /** Connection of the role that serves requests and cannot bypass row-level security. */
  readonly appDatabaseUrl: string;
  readonly databasePoolSize: number;
  /** Folder of the built dashboard; without it only the API is served. */
  readonly dashboardDir: string | undefined;
  /** Addresses of proxies whose word on a caller's own address is taken. */
  readonly trustedProxies: readonly string[];
  /** Marks cookies `Secure`; to be set wherever the service is reached over HTTPS. */
  readonly secureCookies: boolean;
  /** Whether a stranger may create an account and a team of their own. */
  readonly openSignUp: boolean;
  /** Whether an empty database gets the invented demo team. */
  readonly demoTeam: boolean;
  readonly logLevel: string;
  /** How long, s, a process that is to stop goes on serving after it has said that it is no longer ready. */
  readonly drainSeconds: number;
  /** Requests of one account, or of strangers at one address, that are served at a time; 0: as many as are sent. */
  readonly requestsAtOnce: number;
  /** Room, MiB, that a process sets aside in its memory for whole files that come in or leave. */
  readonly fileRoomMib: number;
  /** What who reads the metrics must send; without it there are none. */
  readonly metricsToken: string | undefined;
}

export const APP_ROLE = 'loamledger_app';

const MAX_PORT = 65_535;
const DEFAULT_PORT = 4750;
const DEFAULT_POOL_SIZE = 10;
const MAX_POOL_SIZE = 200;
const MAX_DRAIN_SECONDS = 300;
/** Four times the connections to the database: the mix of one page or of a shared account never waits for itself. */
const DEFAULT_REQUESTS_AT_ONCE = 40;
const MAX_REQUESTS_AT_ONCE = 10_000;
/** Four of the largest files: one is worked on at a time. */
const DEFAULT_FILE_ROOM_MIB = 128;
const MAX_FILE_ROOM_MIB = 4_096;
/** The largest file must find room. */
const LEAST_FILE_ROOM_MIB = 32;
const SHORTEST_SECRET = 24;

/**
 * Reads the configuration from `environment`.
 * @throws Error that lists every variable that is missing or malformed, not only the first.
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const problems: string[] = [];

  const integer = (name: string, fallback: number, maximum: number, minimum = 0) => {
    const text = environment[name];
    if (text === undefined || text === '') return fallback;
    const value = Number(text);
    if (Number.isInteger(value) && value >= minimum && value <= maximum) return value;
    problems.push(`${name} must be a whole number from ${minimum} to ${maximum}, got '${text}'`);
    return fallback;
  };
  const flag = (name: string, fallback: boolean) => {
    const text = environment[name];
    if (text === undefined || text === '') return fallback;
    if (text === 'true' || text === 'false') return text === 'true';
    problems.push(`${name} must be 'true' or 'false', got '${text}'`);
    return fallback;
  };
  const secret = (name: string) => {
    const text = environment[name] || undefined;
    if (text === undefined || text.length >= SHORTEST_SECRET) return text;
    problems.push(`${name} must have at least ${SHORTEST_SECRET} characters`);
    return undefined;
  };
  const addresses = (name: string) => {
    const given = (environment[name] ?? '').split(',').map((text) => text.trim());
    const known = given.filter((text) => text !== '');
    const wrong = known.filter((text) => !isAddressOrRange(text));
    if (wrong.length > 0) {
      problems.push(`${name} must be IP addresses or ranges such as 10.0.0.0/8, got '${wrong.join(', ')}'`);
    }
    return known;
  };

  const database = (name: string) => {
    const text = environment[name] || undefined;
    if (text === undefined || /^postgres(ql)?:\/\//.test(text)) return text;
    problems.push(`${name} must be a postgres:// address`);
    return undefined;
  };

  const ownerDatabaseUrl = database('DATABASE_URL');
  const appDatabaseUrl =
    database('DATABASE_APP_URL') ?? (ownerDatabaseUrl && deriveAppDatabaseUrl(ownerDatabaseUrl));
  if (appDatabaseUrl === undefined && problems.length === 0) {
    problems.push(
      'DATABASE_APP_URL must be a postgres:// address, or DATABASE_URL, which it is derived from',
    );
  }
  const config: Config = {
    host: environment['HOST'] || '127.0.0.1',
    port: integer('PORT', DEFAULT_PORT, MAX_PORT),
    ownerDatabaseUrl,
    // Without one there are problems.
    appDatabaseUrl: appDatabaseUrl ?? '',
    databasePoolSize: integer('DATABASE_POOL_SIZE', DEFAULT_POOL_SIZE, MAX_POOL_SIZE),
    dashboardDir: environment['DASHBOARD_DIR'] || undefined,
    trustedProxies: addresses('TRUSTED_PROXIES'),
    secureCookies: flag('SECURE_COOKIES', false),
    openSignUp: flag('OPEN_SIGN_UP', true),
    demoTeam: flag('DEMO_TEAM', true),
    logLevel: environment['LOG_LEVEL'] || 'info',
    drainSeconds: integer('DRAIN_SECONDS', 0, MAX_DRAIN_SECONDS),
    requestsAtOnce: integer('REQUESTS_AT_ONCE', DEFAULT_REQUESTS_AT_ONCE, MAX_REQUESTS_AT_ONCE),
    fileRoomMib: integer('FILE_ROOM_MIB', DEFAULT_FILE_ROOM_MIB, MAX_FILE_ROOM_MIB, LEAST_FILE_ROOM_MIB),
    metricsToken: secret('METRICS_TOKEN'),
  };
  if (problems.length > 0) throw new Error(`Configuration: ${problems.join('; ')}`);
  return config;
}

/**
 * The address of the schema's owner, for what needs it.
 * @throws Error where there is none.
 */
export function ownerAddress({ ownerDatabaseUrl }: Config): string {
  if (ownerDatabaseUrl !== undefined) return ownerDatabaseUrl;
  throw new Error("Configuration: DATABASE_URL must be the postgres:// address of the schema's owner");
}

/** Whether `text` is such as `192.0.2.7`, `10.0.0.0/8` or `fd00::/8`. */
function isAddressOrRange(text: string): boolean {
  const [address = '', bits, ...more] = text.split('/');
  return isIP(address) !== 0 && more.length === 0 && (bits === undefined || /^\d{1,3}$/.test(bits));
}

/**
 * The application role's address when none is given: same server and database, and a password that only who
 * knows the owner's can compute, so that no second secret has to be handed round.
 */
function deriveAppDatabaseUrl(ownerUrl: string): string {
  const url = new URL(ownerUrl);
  const ownerPassword = decodeURIComponent(url.password);
  url.username = APP_ROLE;
  url.password = createHmac('sha256', ownerPassword).update(APP_ROLE).digest('hex');
  return url.toString();
}
