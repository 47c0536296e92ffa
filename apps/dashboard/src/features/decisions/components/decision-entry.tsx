import { Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';
import { EndOutcome } from './end-outcome.js';
import { RestsOn } from './rests-on.js';
import classes from './decisions.module.css';

interface DecisionEntryProps {
  readonly teamId: string;
  readonly decision: Decision;
  readonly bike: Bike | undefined;
  readonly units: readonly SpringUnit[];
  readonly riderName: string;
  /** null: decided for no track in particular. */
  readonly trackName: string | null;
  readonly children: ReactNode;
}

/** One decision: what changed, why, expected above observed, and what came of it. */
export function DecisionEntry(props: DecisionEntryProps) {
  const { teamId, decision, bike, units, riderName, trackName, children } = props;
  const { expected, observed, outcome, outcomeNote, outcomeAt } = decision;
  const unit = (id: string | null | undefined) => units.find((candidate) => candidate.id === id);
  return (
    <article className={classes.entry} aria-label={`${formatDay(decision.decidedAt)}, ${bike?.name ?? ''}`}>
      <div>
        <Title order={3}>{wholeInChosenUnits(decision.changesInWords)}</Title>
        <Text size="sm" c="dimmed">
          {formatDay(decision.decidedAt)} ·{' '}
          <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId: decision.bikeId }}>
            {bike?.name ?? ''}
          </TextLink>{' '}
          · {riderName} · {trackName ?? texts.allTracks}
        </Text>
      </div>
      <Text>“{decision.reason}”</Text>
      <Text size="sm" c="dimmed">
        {texts.by(decision.decidedByName ?? texts.someone)}
        <RestsOn teamId={teamId} decision={decision} /> · {texts.runsSince(observed.runs, observed.voided)}
      </Text>
      {expected === null && observed.runs === 0 ? (
        <Text size="sm">{texts.nothingExpected}</Text>
      ) : (
        <div className={classes.ends}>
          <EndOutcome
            name={texts.fork}
            unit={unit(bike?.forkUnitId)}
            expected={expected?.fork ?? null}
            observed={observed.fork}
          />
          <EndOutcome
            name={texts.shock}
            unit={unit(bike?.shockUnitId)}
            expected={expected?.shock ?? null}
            observed={observed.shock}
          />
        </div>
      )}
      {outcome !== null && (
        <Text>
          <strong>{texts.outcome[outcome]}</strong>
          {outcomeAt !== null && `, ${formatDay(outcomeAt)}`}
          {outcomeNote !== null && outcomeNote !== '' && `: “${outcomeNote}”`}
        </Text>
      )}
      {outcome === null && children}
    </article>
  );
}
