import type { Fix } from '@loamledger/evidence';
import { radianFromDegrees } from '@loamledger/units';
import { SaxesParser } from 'saxes';
import { NotGpx } from './recording.errors.js';

/** More than fit into the largest file that is taken. */
const MOST_FIXES = 100_000;
/** What receivers add of their own lies a few elements deep. */
const MOST_NESTED = 50;
const VERSION = '1.1';
/** XML Schema's date and time; without a zone it is UTC, as the format says of all its times. */
const TIME = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?)(Z|[+-]\d\d:\d\d)?$/;
const MS_PER_SECOND = 1_000;

/**
 * The track points of a GPX 1.1 file, segment by segment, in seconds since 1970. Only what timing needs is read. A document
 * type is refused, since entities are declared in it: nothing in the file can grow, or reach for another file.
 * @throws NotGpx with the line.
 */
export function readGpx(text: string): Fix[][] {
  const parser = new SaxesParser();
  const segments: Fix[][] = [];
  const path: string[] = [];
  let point: { latitude: number; longitude: number; time: string | null } | undefined;
  let fixes = 0;
  const refuse = (why: string): never => {
    throw new NotGpx(why, parser.line);
  };
  parser.on('error', (error) => refuse(`well-formed XML (${error.message.replace(/^\S+ /, '')})`));
  parser.on('doctype', () => refuse('without a document type'));
  parser.on('opentag', ({ name, attributes }) => {
    const tag = localName(name);
    if (path.length === 0 && (tag !== 'gpx' || attributes['version'] !== VERSION)) {
      refuse(`GPX of version ${VERSION}`);
    }
    path.push(tag);
    if (path.length > MOST_NESTED) refuse(`elements nested at most ${MOST_NESTED} deep`);
    if (tag === 'trkseg') segments.push([]);
    if (tag !== 'trkpt') return;
    point = {
      latitude: degrees(attributes['lat'], 90) ?? refuse('track points with lat and lon in degrees'),
      longitude: degrees(attributes['lon'], 180) ?? refuse('track points with lat and lon in degrees'),
      time: null,
    };
  });
  parser.on('text', (words) => {
    if (point && path.at(-1) === 'time' && path.at(-2) === 'trkpt') point.time = (point.time ?? '') + words;
  });
  parser.on('closetag', () => {
    if (path.pop() !== 'trkpt' || point === undefined) return;
    const time = secondsOf(point.time) ?? refuse('track points with the time of each');
    const segment = segments.at(-1) ?? refuse('track points within segments');
    const before = segment.at(-1) ?? segments.at(-2)?.at(-1);
    if (before !== undefined && time < before.time) refuse('track points in the order of their times');
    fixes += 1;
    if (fixes > MOST_FIXES) refuse(`at most ${MOST_FIXES} track points`);
    // Two fixes at one moment have no speed between them.
    if (time !== before?.time) {
      segment.push({
        latitude: radianFromDegrees(point.latitude),
        longitude: radianFromDegrees(point.longitude),
        time,
      });
    }
    point = undefined;
  });
  parser.write(text).close();
  return segments.filter((segment) => segment.length > 0);
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);

function degrees(text: unknown, most: number): number | undefined {
  const value =
    typeof text === 'string' && /^[+-]?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
  return Math.abs(value) <= most ? value : undefined;
}

function secondsOf(text: string | null): number | undefined {
  const [, moment, zone = 'Z'] = TIME.exec(text?.trim() ?? '') ?? [];
  const milliseconds = moment === undefined ? Number.NaN : Date.parse(`${moment}${zone}`);
  return Number.isNaN(milliseconds) ? undefined : milliseconds / MS_PER_SECOND;
}
