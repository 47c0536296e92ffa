import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './workshop.module.css';

interface StepsProps {
  readonly steps: readonly string[];
  /** False: a list to check off in any order. */
  readonly ordered?: boolean;
}

/** What to do, one after another. */
export function Steps({ steps, ordered = true }: StepsProps) {
  const items = steps.map((step) => <li key={step}>{wholeInChosenUnits(step)}</li>);
  return ordered ? <ol className={classes.list}>{items}</ol> : <ul className={classes.list}>{items}</ul>;
}
