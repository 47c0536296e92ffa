import { useEffect, useRef, type ReactNode } from 'react';
import { STEPS, type Entered, type StepName } from '../model/steps.js';
import { texts } from '../texts.js';
import classes from './step-list.module.css';

interface StepListProps {
  readonly entered: Entered;
  readonly leftOut: ReadonlySet<StepName>;
  readonly now: StepName | undefined;
  /** What is to be done in the step of now, or after all of them. */
  readonly children: ReactNode;
}

/** Every step with what is there, and the one to do now opened. */
export function StepList({ entered, leftOut, now, children }: StepListProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const before = useRef(now);
  useEffect(() => {
    // Who has just done one is led to the next; who has just arrived is left where they are.
    if (before.current !== now) heading.current?.focus();
    before.current = now;
  }, [now]);
  const done = STEPS.filter((step) => entered[step] !== null || leftOut.has(step)).length;
  return (
    <>
      <p role="status" className={classes.progress}>
        {texts.progress(done, STEPS.length)}
      </p>
      <ol className={classes.steps}>
        {STEPS.map((step) => (
          <li key={step} className={classes.step} aria-current={step === now ? 'step' : undefined}>
            <h2 ref={step === now ? heading : null} tabIndex={-1} className={classes.title}>
              {texts.step[step]}
            </h2>
            <span className={classes.state}>{stateOf(step, entered, leftOut, now)}</span>
            {step === now && (
              <div className={classes.body}>
                <p className={classes.lead}>{texts.stepLead[step]}</p>
                {children}
              </div>
            )}
          </li>
        ))}
      </ol>
      {now === undefined && (
        <section className={classes.end} aria-labelledby="first-steps-end">
          <h2 id="first-steps-end" ref={heading} tabIndex={-1} className={classes.title}>
            {texts.all}
          </h2>
          <p className={classes.lead}>{texts.allLead}</p>
          {children}
        </section>
      )}
    </>
  );
}

function stateOf(
  step: StepName,
  entered: Entered,
  leftOut: ReadonlySet<StepName>,
  now: StepName | undefined,
): string {
  const there = entered[step];
  if (there !== null) return `${texts.done}: ${there}`;
  if (leftOut.has(step)) return texts.leftOut;
  return step === now ? texts.now : texts.later;
}
