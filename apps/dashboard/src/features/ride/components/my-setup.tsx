import { Text, Title } from '@mantine/core';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import type { StrokeMarks } from '../../../shared/ui/stroke-bar/layout.js';
import { texts } from '../texts.js';
import classes from './ride.module.css';

interface MySetupProps {
  readonly now: Setup;
  readonly before: Setup | undefined;
  readonly decision: Decision | undefined;
  /** What the set-up uses of its stroke on the chosen track, where it is known. */
  readonly strokes: { readonly fork?: StrokeMarks | undefined; readonly shock?: StrokeMarks | undefined };
}

/** The own set-up in figures that are read at arm's length, and what changed last. */
export function MySetup({ now, before, decision, strokes }: MySetupProps) {
  return (
    <>
      <div className={classes.ends}>
        <div className={classes.end}>
          <Title order={2} size="h3">
            {texts.fork}
          </Title>
          <EndFigures end={now.fork} big />
          {strokes.fork !== undefined && <StrokeBar title={texts.fork} titleHidden {...strokes.fork} />}
        </div>
        {now.shock !== null && (
          <div className={classes.end}>
            <Title order={2} size="h3">
              {texts.shock}
            </Title>
            <EndFigures end={now.shock} big />
            {strokes.shock !== undefined && <StrokeBar title={texts.shock} titleHidden {...strokes.shock} />}
          </div>
        )}
      </div>
      <div>
        <Text fw={600}>
          {texts.changed(formatDay(now.createdAt))}
          {before !== undefined && `: ${setupChanges(before, now).join('; ')}`}
        </Text>
        {decision?.toSetupId === now.id && <Text>“{decision.reason}”</Text>}
      </div>
    </>
  );
}
