/** A straight invented track: gates 600 m apart on the same meridian, and recordings of riding down it. */
const METRES_A_DEGREE = (Math.PI / 180) * 6_371_008.8;
const [LATITUDE, LONGITUDE] = [46.5, 8.1];
/** Half the length of a gate, in degrees of longitude: some 20 m. */
const HALF_GATE = 0.00026;

const latitudeAt = (metres: number) => LATITUDE + metres / METRES_A_DEGREE;
const gateAt = (metres: number) => ({
  fromLatitudeDeg: latitudeAt(metres),
  fromLongitudeDeg: LONGITUDE - HALF_GATE,
  toLatitudeDeg: latitudeAt(metres),
  toLongitudeDeg: LONGITUDE + HALF_GATE,
});

export const GATES = { startGate: gateAt(0), finishGate: gateAt(600) };

/** Track points of a rider who passes the start gate at `start` and rides 600 m at a constant speed, m/s. */
export function segmentOf(start: string, speed: number): string {
  const begin = Date.parse(start);
  const seconds = Math.ceil(600 / speed) + 12;
  const points = Array.from({ length: seconds + 6 }, (_, i) => {
    // Half a second beside the gate, so that the crossing is between two fixes.
    const since = i - 5.5;
    const time = new Date(begin + since * 1_000).toISOString();
    return `<trkpt lat="${latitudeAt(since * speed).toFixed(9)}" lon="${LONGITUDE}"><ele>1450</ele><time>${time}</time></trkpt>`;
  });
  return `<trkseg>${points.join('\n')}</trkseg>`;
}

export const gpxOf = (...segments: readonly string[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="receiver"><trk>${segments.join('\n')}</trk></gpx>`;
