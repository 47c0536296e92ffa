import { useQuery } from '@tanstack/react-query';
import { Suspense, use } from 'react';
import { MySetup } from '../../features/ride/components/my-setup.js';
import type { TodaysAir } from '../../features/ride/model/todays-air.js';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { bikeEndsQuery, type BikeEnds } from '../../features/workbench/api/bike-ends.js';
import { strokeMarks } from '../../shared/format/stroke-marks.js';
import { joined } from '../../shared/http/joined.js';
import { ApiProblem } from '../../shared/http/problem.js';
import { baselinesQuery, type EndBaseline } from '../../shared/http/reads/baselines.js';
import { lastDecisionQuery, type Decision } from '../../shared/http/reads/decisions.js';
import { currentSetupsQuery, type EndSetup, type Setup } from '../../shared/http/reads/setups.js';
import { asOf, type Aged } from '../../shared/ui/as-of.js';
import type { StrokeMarks } from '../../shared/ui/stroke-bar/layout.js';
import { Empty } from '../../shared/ui/empty.js';
import { Loading, QueryView } from '../../shared/ui/query-view.js';
import { isFilledElsewhere, pumpToQuestion, todaysPressure } from '../todays-pressure.js';
import classes from './my-bike-page.module.css';

/** A blind plan hides the set-up from its rider. */
const isHidden = (error: Error | null) => error instanceof ApiProblem && error.code === 'blind-plan.hidden';

interface NowProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly trackId: string | undefined;
  readonly air: TodaysAir | undefined;
  /** The set-up of the newest run. */
  readonly lastRidden: string | undefined;
  /** What else the page shows, for the age that it tells. */
  readonly alsoShown: readonly Aged[];
}

/** The set-up now in today's air, what it uses of its stroke on the track, and why it was changed last. */
export function MyBikeNow({ teamId, bikeId, trackId, air, lastRidden, alsoShown }: NowProps) {
  const setups = useQuery(currentSetupsQuery(teamId, bikeId));
  const decisions = useQuery(lastDecisionQuery(teamId, bikeId));
  // What the engine needs of the units hardly changes, and the figures do not wait for it.
  const ends = useQuery({ ...bikeEndsQuery(teamId, bikeId, trackId), enabled: trackId !== undefined });
  // The pictures come when they come; the figures do not wait for them.
  const baselines = useQuery({
    ...baselinesQuery(teamId, { trackId: trackId ?? '', bikeId }),
    enabled: trackId !== undefined,
  });
  const baseline = baselines.data?.find((item) => item.bikeId === bikeId);
  const marks = (end: EndBaseline | null | undefined) =>
    end?.current ? strokeMarks(end, end.current) : undefined;
  // What was read before the plan was made says too much now.
  if ([setups, decisions].some(({ error }) => isHidden(error))) {
    return (
      <>
        <p className={classes.age} role="status">
          {asOf(alsoShown, Date.now())}
        </p>
        <p>{myBikeTexts.hiddenByPlan}</p>
      </>
    );
  }
  const state = joined([setups, decisions], () => ({
    setups: setups.data ?? [],
    decision: decisions.data?.[0],
  }));
  // The room of the figures and pictures is kept, so that nothing below is pushed away when they come.
  const isSetUp = setups.data === undefined || setups.data.length > 0;
  return (
    <div className={isSetUp ? classes.now : undefined}>
      <p className={classes.age} role="status">
        {asOf([setups, decisions, ...alsoShown], Date.now())}
      </p>
      <QueryView query={state}>
        {({ setups: [now, before], decision }) =>
          now === undefined ? (
            <Empty title={myBikeTexts.notSetUp}>{myBikeTexts.notSetUpLead}</Empty>
          ) : (
            <Suspense fallback={<Loading />}>
              <Today
                now={now}
                before={before}
                decision={decision}
                lastRidden={lastRidden}
                air={air}
                ends={ends.data}
                strokes={{ fork: marks(baseline?.fork), shock: marks(baseline?.shock) }}
              />
            </Suspense>
          )
        }
      </QueryView>
    </div>
  );
}

interface TodayProps extends Pick<NowProps, 'air' | 'lastRidden'> {
  readonly now: Setup;
  readonly before: Setup | undefined;
  readonly decision: Decision | undefined;
  readonly ends: BikeEnds | undefined;
  readonly strokes: { readonly fork: StrokeMarks | undefined; readonly shock: StrokeMarks | undefined };
}

/** The figures, corrected where they were pumped in other air. */
function Today({ now, before, decision, lastRidden, air, ends, strokes }: TodayProps) {
  const pumpTo = isFilledElsewhere(now) ? use(pumpToQuestion()).pumpTo : null;
  const endOf = (name: 'fork' | 'shock', fill: EndSetup) => ({
    today: todaysPressure(now, fill, ends?.[name], air, pumpTo),
    isAssumed: air?.isAssumed === true,
    stroke: strokes[name],
  });
  return (
    <MySetup
      now={now}
      before={before}
      decision={decision}
      lastRidden={lastRidden}
      fork={endOf('fork', now.fork)}
      shock={endOf('shock', now.shock ?? now.fork)}
    />
  );
}
