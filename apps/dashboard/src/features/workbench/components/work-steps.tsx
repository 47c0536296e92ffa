import { List, Text } from '@mantine/core';
import { memo, useDeferredValue, useMemo } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { WarningMark } from '../../../shared/ui/note.js';
import type { OpenedBench } from '../model/bench.js';
import type { Fill } from '../model/fill.js';
import { reboundAt } from '../model/late-answers.js';
import { workFor, type Work } from '../model/work-steps.js';
import { texts } from '../texts.js';
import classes from './workbench.module.css';

interface WorkStepsProps {
  readonly fork: OpenedBench | null;
  readonly shock: OpenedBench | null;
  /** Null while what is proposed cannot be. */
  readonly forkFill: Fill | null;
  readonly shockFill: Fill | null;
}

/** What to do in which order with which cautions, to be printed and taken to the bike. */
export function WorkSteps({ fork, shock, forkFill, shockFill }: WorkStepsProps) {
  const forkWork = useWork(fork, forkFill);
  const shockWork = useWork(shock, shockFill);
  if (forkWork.steps.length === 0 && shockWork.steps.length === 0) return <Text>{texts.noWork}</Text>;
  return (
    <>
      <Text fw={600}>{texts.first}</Text>
      <div className={classes.works}>
        <EndWork name={texts.fork} unitName={fork?.end.unitName} work={forkWork} />
        <EndWork name={texts.shock} unitName={shock?.end.unitName} work={shockWork} />
      </div>
    </>
  );
}

interface EndWorkProps {
  readonly name: string;
  readonly unitName: string | undefined;
  readonly work: Work;
}

const EndWork = memo(function EndWork({ name, unitName, work }: EndWorkProps) {
  if (work.steps.length === 0) return null;
  return (
    <section aria-label={name} className={classes.part}>
      <h3>
        {name}: {unitName}
      </h3>
      <Needed work={work} />
      <List type="ordered">
        {work.steps.map((step) => (
          <List.Item key={step}>{step}</List.Item>
        ))}
      </List>
    </section>
  );
});

const NO_WORK: Work = { spacersNeeded: null, steps: [] };

/** The steps follow the press of a stepper in the frame after it. */
function useWork(bench: OpenedBench | null, fill: Fill | null): Work {
  const settled = useDeferredValue(fill);
  return useMemo(() => {
    if (bench?.status !== 'ready' || settled === null) return NO_WORK;
    return workFor(bench.now.fill, settled, reboundAt(bench, settled), bench.end.spacersInStock);
  }, [bench, settled]);
}

function Needed({ work: { spacersNeeded } }: { work: Work }) {
  if (spacersNeeded === null) return null;
  const { count, inStock } = spacersNeeded;
  return (
    <Text>
      {texts.spacersNeeded(formatCount(count, 'spacer'))}, {texts.inStock(inStock)}
      {count > inStock && (
        <>
          {'. '}
          <WarningMark>{texts.short}</WarningMark>
        </>
      )}
    </Text>
  );
}
