/** How the text of a cell is read. */
export type CellKind = 'text' | 'number' | 'duration' | 'moment' | 'yes-no';

/** What a cell's value belongs to: a name to look up, the session, the set-up, the run itself, or a section of its track. */
export type Part = 'names' | 'session' | 'setup' | 'run' | 'sections';

export interface Column {
  /** The header, in snake case with its unit. */
  readonly name: string;
  readonly part: Part;
  /** Path of the value in the part's message, e.g. `fork.travelUsedMm`: the message's class knows its limits. */
  readonly path: string;
  readonly kind: CellKind;
  /** A file without this column is refused. */
  readonly required?: true;
}

const text = (name: string, part: Part, path: string): Column => ({ name, part, path, kind: 'text' });
const number = (name: string, part: Part, path: string): Column => ({ name, part, path, kind: 'number' });

const setupOf = (end: 'fork' | 'shock'): Column[] => [
  number(`${end}_pressure_psi`, 'setup', `${end}.pressurePsi`),
  number(`${end}_spacers`, 'setup', `${end}.spacers`),
  number(`${end}_rebound_clicks`, 'setup', `${end}.reboundClicks`),
  number(`${end}_compression_clicks`, 'setup', `${end}.compressionClicks`),
];

const readingOf = (end: 'fork' | 'shock'): Column[] => [
  number(`${end}_travel_used_mm`, 'run', `${end}.travelUsedMm`),
  number(`${end}_travel_left_mm`, 'run', `${end}.travelLeftMm`),
  number(`${end}_reading_sd_mm`, 'run', `${end}.readingSdMm`),
  number(`${end}_bottom_outs`, 'run', `${end}.bottomOuts`),
];

/** Every column of the format, in the order of an export. */
export const COLUMNS: readonly Column[] = [
  { ...text('date', 'session', 'day'), required: true },
  { ...text('track', 'names', 'track'), required: true },
  { ...text('bike', 'names', 'bike'), required: true },
  text('rider', 'names', 'rider'),
  text('condition', 'session', 'condition'),
  number('air_temperature_c', 'session', 'airTemperatureC'),
  number('station_pressure_hpa', 'session', 'stationPressureHpa'),
  { name: 'start_time', part: 'run', path: 'startedAt', kind: 'moment' },
  { name: 'time_s', part: 'run', path: 'timeS', kind: 'duration' },
  ...setupOf('fork'),
  ...setupOf('shock'),
  number('filled_altitude_m', 'setup', 'filledAltitudeM'),
  number('filled_temperature_c', 'setup', 'filledTemperatureC'),
  ...readingOf('fork'),
  ...readingOf('shock'),
  number('support', 'run', 'ratings.support'),
  number('comfort', 'run', 'ratings.comfort'),
  number('ride_height', 'run', 'ratings.rideHeight'),
  number('fatigue', 'run', 'ratings.fatigue'),
  text('spoilt', 'run', 'spoilt.reason'),
  { name: 'readings_count', part: 'run', path: 'spoilt.readingsCount', kind: 'yes-no' },
  text('note', 'run', 'note'),
];

const SECTION_PREFIX = 'section_s:';

/** The column of a section's time; its path is the section's name. */
export const sectionColumn = (section: string): Column => ({
  name: `${SECTION_PREFIX} ${section}`,
  part: 'sections',
  path: section,
  kind: 'duration',
});

/** The section that a header names, if it names one. */
export const sectionOfHeader = (header: string): string | undefined =>
  header.toLowerCase().startsWith(SECTION_PREFIX) ? header.slice(SECTION_PREFIX.length).trim() : undefined;

/** The fields that lead to a column's value. The name of a section is one, whatever it is made of. */
export const fieldsOf = ({ part, path }: Column): readonly string[] =>
  part === 'sections' ? [path] : path.split('.');

/** The column behind a field of a part's message; the first of a group for the group itself, '' for none. */
export function columnNameOf(part: Part, field: string): string {
  const columns = COLUMNS.filter((column) => column.part === part);
  const found =
    columns.find(({ path }) => path === field) ?? columns.find(({ path }) => path.startsWith(`${field}.`));
  return found?.name ?? '';
}
