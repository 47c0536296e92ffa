import { InvalidField, Refusal } from '../../../platform/errors/refusal.js';

export class NotGpx extends Refusal {
  constructor(allowed: string, line: number) {
    super('recording.not-gpx', 'invalid', `Line ${line}: the file must be ${allowed}.`, [
      { field: `line ${line}`, given: null, allowed },
    ]);
  }
}

export class NotText extends Refusal {
  constructor() {
    super('recording.not-text', 'malformed', 'Send the file as application/gpx+xml, encoded as UTF-8.');
  }
}

export class NoGates extends InvalidField {
  constructor(trackId: string) {
    super('recording.no-gates', 'trackId', trackId, 'a track with a start gate and a finish gate');
  }
}

/** Where one run of a recording cannot be stored, none is. */
export class RecordingRefused extends Refusal {
  constructor(problems: readonly string[]) {
    const [first = 'No run passes both gates.'] = problems;
    super('recording.refused', 'invalid', `${first} Nothing was stored.`);
  }
}
