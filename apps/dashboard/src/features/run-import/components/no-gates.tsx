import type { Track } from '../../../shared/http/reads/tracks.js';
import { Empty } from '../../../shared/ui/empty.js';
import { LinkButton, TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';
import classes from './run-import.module.css';

interface NoGatesProps {
  readonly teamId: string;
  readonly tracks: readonly Track[];
}

/** No track can be timed yet: the way to where its gates are entered, and back then by the track's own page. */
export function NoGates({ teamId, tracks }: NoGatesProps) {
  if (tracks.length === 0) {
    return (
      <Empty
        isPart
        title={texts.noTracks}
        action={
          <LinkButton to="/teams/$teamId/tracks/$trackId/change" params={{ teamId, trackId: 'new' }}>
            {texts.enterTrack}
          </LinkButton>
        }
      >
        {texts.noTracksLead}
      </Empty>
    );
  }
  return (
    <Empty
      isPart
      title={texts.noGates}
      action={
        <ul className={classes.ways}>
          {tracks.map(({ id, name }) => (
            <li key={id}>
              <TextLink to="/teams/$teamId/tracks/$trackId/change" params={{ teamId, trackId: id }}>
                {texts.enterGates(name)}
              </TextLink>
            </li>
          ))}
        </ul>
      }
    >
      {texts.noGatesLead}
    </Empty>
  );
}
