import { accepted, archived } from '../../platform/archive/archived.js';
import { list, message, nullable, number, part, text } from '../../platform/archive/checks.js';
import { refuseGateLength } from './gates.js';
import { TrackEntity } from './track.entity.js';
import { MAX_SECTIONS, TrackDto } from './tracks.dto.js';
import { answer, refuseDoubledSections } from './tracks.service.js';

const MAX_NAME = 80;

const place = part({
  latitude: number(-Math.PI / 2, Math.PI / 2),
  longitude: number(-Math.PI, Math.PI),
});
const gate = part({ from: place, to: place });

export const TRACK_ARCHIVE = archived(TrackEntity, {
  columns: {
    sections: list(text(MAX_NAME), MAX_SECTIONS),
    startGate: nullable(gate),
    finishGate: nullable(gate),
  },
  row: message(TrackDto, answer),
  rules: [
    accepted(({ sections }) => refuseDoubledSections(sections)),
    accepted(({ startGate }) => refuseGateLength('startGate', startGate)),
    accepted(({ finishGate }) => refuseGateLength('finishGate', finishGate)),
  ],
});
