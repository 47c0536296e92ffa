import { Text, Title } from '@mantine/core';
import { memo, useDeferredValue, useMemo, useState } from 'react';
import { formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import { isOnlyBounded } from '../../../shared/http/reads/baselines.js';
import { Warning } from '../../../shared/ui/note.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import type { BikeEnds } from '../api/bike-ends.js';
import type { Bench, Proposed } from '../model/bench.js';
import { fillText } from '../../../shared/format/fill.js';
import { type FillField } from '../model/fill.js';
import { reboundAt, tradeAt, uncertainNow, uncertaintyAt } from '../model/late-answers.js';
import { hasAllLimits } from '../model/limits.js';
import type { Proposal } from '../model/proposal.js';
import { strokeMarksOf } from '../model/stroke-marks.js';
import { texts } from '../texts.js';
import { AssumedList } from './assumed-list.js';
import { BaselineWishes } from './baseline-wishes.js';
import { BigStep } from './big-step.js';
import { CurveChart } from './curve-chart.js';
import { FiguresTable } from './figures-table.js';
import { FillSteppers } from './fill-steppers.js';
import { TradeHints } from './trade-hints.js';
import { usePrinting } from './use-printing.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './workbench.module.css';

// What a press does not move is not drawn again.
const StillStrokeBar = memo(StrokeBar);
const StillTradeHints = memo(TradeHints);
const StillAssumedList = memo(AssumedList);

interface EndBenchProps {
  readonly teamId: string;
  readonly bench: Bench;
  readonly ends: BikeEnds;
  readonly proposal: Proposal;
  readonly proposed: Proposed;
  readonly refused: Readonly<Partial<Record<FillField, string>>>;
  readonly canChange: boolean;
  readonly onPropose: (proposal: Proposal) => void;
}

/** One end of the bike: what moves, what it does, and the pictures of now and proposed. */
export function EndBench(props: EndBenchProps) {
  const { teamId, bench, ends, proposal, proposed, refused, canChange, onPropose } = props;
  const { end, now } = bench;
  const { view } = proposed;
  // The press's own frame shows figures and pictures; what takes longer follows in the next.
  const settled = useDeferredValue(view?.fill ?? now.fill);
  const [asked, setAsked] = useState(false);
  const printing = usePrinting();
  // How sure it is takes many landings: told where somebody asks, and on paper always.
  const ranges = asked || printing;
  const before = useMemo(() => uncertainNow(bench), [bench]);
  const nowRanges = useMemo(
    () => (ranges ? uncertaintyAt(bench, before, bench.now.fill)?.figures : undefined),
    [ranges, bench, before],
  );
  const nowMarks = useMemo(() => strokeMarksOf(bench, now, nowRanges), [bench, now, nowRanges]);
  const uncertainty = useMemo(
    () => (ranges ? uncertaintyAt(bench, before, settled) : null),
    [ranges, bench, before, settled],
  );
  const rebound = useMemo(() => reboundAt(bench, settled), [bench, settled]);
  const trade = useMemo(() => tradeAt(bench, settled.spacers), [bench, settled.spacers]);
  const chart = {
    now: now.curve,
    proposed: view?.curve ?? null,
    bumperStartMm: end.unit.strokeMm - end.unit.bumperLengthMm,
  };
  return (
    <div className={classes.bench}>
      <div className={classes.column}>
        <FillSteppers
          teamId={teamId}
          bench={bench}
          proposal={proposal}
          proposed={proposed}
          refused={refused}
          onPropose={onPropose}
        />
        <section className={classes.part} aria-label={texts.figures}>
          <FiguresTable
            bench={bench}
            proposed={view}
            uncertainty={uncertainty}
            asked={asked}
            onAsk={setAsked}
          />
          {view !== null && <BigStep now={now.fill} proposed={view.fill} onPropose={onPropose} />}
          {ends.trackId !== null && (
            <BaselineWishes teamId={teamId} bikeId={ends.bikeId} trackId={ends.trackId} end={end.unit.kind} />
          )}
          {end.evidence !== null && <Evidence evidence={end.evidence} />}
          <Text size="sm" c="dimmed">
            {texts.air(formatNumber(end.ambientPressureHpa), temperatureText(end.airTemperatureC))}
          </Text>
        </section>
        {hasAllLimits(end.limits) && (
          <section className={classes.part}>
            <Title order={3}>{texts.trade}</Title>
            <StillTradeHints trade={trade} limits={bench.limits} onPropose={onPropose} />
          </section>
        )}
        {view !== null && view !== now && rebound !== null && (
          <Text>
            {texts.rebound}: {texts.reboundWords[rebound]}.
          </Text>
        )}
      </div>
      <div className={classes.column}>
        <section className={classes.part} aria-label={texts.strokes}>
          <StillStrokeBar title={texts.strokeNow(fillText(now.fill))} {...nowMarks} />
          {view !== null && (
            <StrokeBar
              title={texts.strokeProposed(fillText(view.fill))}
              {...strokeMarksOf(bench, view, uncertainty?.figures)}
            />
          )}
        </section>
        <section className={classes.column} aria-label={texts.curves}>
          <CurveChart title={texts.force} quantity="forceN" unit={texts.forceUnit} decimals={0} {...chart} />
          <CurveChart
            title={texts.stiffness}
            quantity="stiffnessNPerMm"
            unit={texts.stiffnessUnit}
            decimals={1}
            {...chart}
          />
          <Text size="sm" c="dimmed">
            {texts.settled}
          </Text>
        </section>
      </div>
      <section className={`${classes.part} ${classes.across}`}>
        <Title order={3}>{texts.assumed}</Title>
        <StillAssumedList teamId={teamId} end={end} ends={ends} canChange={canChange} />
      </section>
    </div>
  );
}

function Evidence({ evidence }: { evidence: NonNullable<Bench['end']['evidence']> }) {
  return (
    <>
      <Text size="sm">
        {texts.evidence}: <strong>{evidence.level}</strong>. {wholeInChosenUnits(evidence.message)}
      </Text>
      {isOnlyBounded(evidence) && <Warning word={texts.beware}>{texts.lowerBoundOnly}</Warning>}
    </>
  );
}
