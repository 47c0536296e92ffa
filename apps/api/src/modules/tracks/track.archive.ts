import { accepted, archived } from '../../platform/archive/archived.js';
import { list, message, text } from '../../platform/archive/checks.js';
import { TrackEntity } from './track.entity.js';
import { TrackDto } from './tracks.dto.js';
import { answer, refuseDoubledSections } from './tracks.service.js';

const MAX_SECTIONS = 30;
const MAX_NAME = 80;

export const TRACK_ARCHIVE = archived(TrackEntity, {
  columns: { sections: list(text(MAX_NAME), MAX_SECTIONS) },
  row: message(TrackDto, answer),
  rules: [accepted(({ sections }) => refuseDoubledSections(sections))],
});
