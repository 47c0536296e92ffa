import { lazy, Suspense, useState } from 'react';
import type { TodaysAir } from '../../features/ride/model/todays-air.js';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { formatNumber, temperatureText } from '../../shared/format/numbers.js';
import { Assumed } from '../../shared/ui/note.js';
import { Loading } from '../../shared/ui/query-view.js';
import type { ChoosersProps } from './my-bike-choosers.js';
import classes from './my-bike-page.module.css';

const Choosers = lazy(() => import('./my-bike-choosers.js').then((module) => ({ default: module.Choosers })));

interface PlaceProps extends ChoosersProps {
  readonly air: TodaysAir | undefined;
}

/** Which track and air the figures below are for; opens to change them. */
export function Place({ air, ...choosers }: PlaceProps) {
  const [wasOpened, setWasOpened] = useState(false);
  const track = choosers.tracks.find(({ id }) => id === choosers.trackId);
  return (
    <details className="ll-screen-only" onToggle={() => setWasOpened(true)}>
      <summary>
        {track === undefined || air === undefined ? (
          myBikeTexts.change
        ) : (
          <span>
            {myBikeTexts.chosen(track.name, formatNumber(track.altitudeM), temperatureText(air.temperatureC))}
            {air.isAssumed && <Assumed />}
            <span className="ll-heard-only">{myBikeTexts.change}</span>
          </span>
        )}
      </summary>
      <div className={classes.choosers}>
        {wasOpened && (
          <Suspense fallback={<Loading />}>
            <Choosers {...choosers} />
          </Suspense>
        )}
      </div>
    </details>
  );
}
