import { useCallback, useLayoutEffect, useRef, useState } from 'react';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { Warning } from '../../../shared/ui/note.js';
import { Section } from '../../../shared/ui/page.js';
import type { BikeEnds } from '../api/bike-ends.js';
import { useProposeChange } from '../api/propose-change.js';
import { changeMessage, endRefusals, hindranceOf } from '../model/change.js';
import { AS_NOW, type Proposal } from '../model/proposal.js';
import { texts } from '../texts.js';
import { EndPanel } from './end-panel.js';
import { ProposeChange } from './propose-change.js';
import { isTouched, useEnd } from './use-end.js';
import { WorkSteps } from './work-steps.js';
import classes from './workbench.module.css';

export type End = 'fork' | 'shock';

interface WorkbenchProps {
  readonly teamId: string;
  readonly ends: BikeEnds;
  /** The set-up in the bike, for what the workbench does not move. */
  readonly setup: Setup | undefined;
  readonly active: End;
  readonly onActive: (end: End) => void;
  readonly canPropose: boolean;
  /** Whether who looks may change the team's figures. */
  readonly canChange: boolean;
  /** Reads again what is in the bike. */
  readonly onLookAgain: () => void;
}

const END_CHOICES = [
  { value: 'fork', label: texts.fork },
  { value: 'shock', label: texts.shock },
] as const;

/** Fork and shock of a bike, proposals at both, and the way from there into the records. */
export function Workbench(props: WorkbenchProps) {
  const { teamId, ends, setup, active, onActive, canPropose, canChange, onLookAgain } = props;
  const [begunAt, setBegunAt] = useState(ends.setupId);
  const fork = useEnd(ends.fork, ends.braking);
  const shock = useEnd(ends.shock, ends.braking);
  const sending = useProposeChange(teamId);
  const shown: End = shock.opened === null ? 'fork' : active;
  const inHand = { fork, shock }[shown];
  const touched = isTouched(fork) || isTouched(shock);

  const { isIdle, isPending, reset } = sending;
  const { onPropose } = inHand;
  const propose = useCallback(
    (proposal: Proposal) => {
      // What the last message came to is no word on the next one.
      if (!isIdle && !isPending) reset();
      onPropose(proposal);
    },
    [isIdle, isPending, reset, onPropose],
  );
  // The form below is not drawn again by a press; it finds what stands on the bench when it sends.
  const latest = useRef({ fork, shock, ends, setup });
  useLayoutEffect(() => {
    latest.current = { fork, shock, ends, setup };
  });
  const { mutate } = sending;
  const send = useCallback(
    (words: { reason: string; note: string }, onSaved: () => void) => {
      const { fork: front, shock: rear, ...records } = latest.current;
      const forkFill = front.proposed?.view?.fill;
      if (forkFill === undefined) return;
      const shockFill = rear.proposed?.view?.fill ?? null;
      mutate(changeMessage({ ...records, fork: forkFill, shock: shockFill, ...words }), {
        onSuccess: ({ id }) => {
          setBegunAt(id);
          front.onPropose(AS_NOW);
          rear.onPropose(AS_NOW);
          onSaved();
        },
      });
    },
    [mutate],
  );
  return (
    <>
      {touched && ends.setupId !== begunAt && !sending.isPending && (
        <Warning word={texts.changedMeanwhileWord} urgent>
          {texts.changedMeanwhile}
        </Warning>
      )}
      {ends.shock !== null && (
        <div className={`${classes.ends} ll-screen-only`}>
          <ChoiceRow label={texts.end} choices={END_CHOICES} value={shown} onChange={onActive} />
        </div>
      )}
      <Section title={`${shown === 'fork' ? texts.fork : texts.shock}: ${ends[shown]?.unitName ?? ''}`}>
        <EndPanel
          // What is open in one end's pictures is not meant for the other's.
          key={shown}
          teamId={teamId}
          inHand={inHand}
          onPropose={propose}
          ends={ends}
          refused={endRefusals(sending.error, shown)}
          canSetUp={canPropose}
          canChange={canChange}
        />
      </Section>
      <Section title={texts.work}>
        <WorkSteps
          fork={fork.opened}
          shock={shock.opened}
          forkFill={fork.proposed?.view?.fill ?? null}
          shockFill={shock.proposed?.view?.fill ?? null}
        />
      </Section>
      {canPropose && (
        <div className="ll-screen-only">
          <Section title={texts.propose}>
            <ProposeChange
              teamId={teamId}
              bikeId={ends.bikeId}
              isPending={isPending}
              saved={sending.data}
              error={sending.error}
              hindrance={hindranceOf([fork, shock])}
              shown={shown}
              onSend={send}
              onReset={reset}
              onLookAgain={onLookAgain}
            />
          </Section>
        </div>
      )}
    </>
  );
}
