import { formatPressure, wordFor } from '../format/numbers.js';
import { shownUnit } from '../format/units.js';
import type { EndSetup } from '../http/reads/setups.js';
import classes from './end-figures.module.css';

interface EndFiguresProps {
  readonly end: Pick<EndSetup, 'pressurePsi' | 'spacers' | 'reboundClicks' | 'compressionClicks'>;
  /** For the phone at arm's length, in the sun. */
  readonly big?: boolean;
}

/** What one end of a bike is set to: pressure and spacers first, clicks below. */
export function EndFigures({ end, big = false }: EndFiguresProps) {
  return (
    <div className={big ? classes.big : classes.plain}>
      <span className={classes.main}>
        <span className={classes.figure}>{formatPressure(end.pressurePsi)}</span>
        <span className={classes.unit}>{shownUnit('psi')}</span>
      </span>
      <span className={classes.main}>
        <span className={classes.figure}>{end.spacers}</span>
        <span className={classes.unit}>{wordFor(end.spacers, 'spacer')}</span>
      </span>
      <Clicks end={end} />
    </div>
  );
}

function Clicks({ end: { reboundClicks, compressionClicks } }: Pick<EndFiguresProps, 'end'>) {
  const noted = [
    ...(reboundClicks === null ? [] : [`rebound ${reboundClicks}`]),
    ...(compressionClicks === null ? [] : [`compression ${compressionClicks}`]),
  ];
  if (noted.length === 0) return <span className={classes.clicks}>clicks not noted</span>;
  return (
    <span className={classes.clicks}>
      {noted.join(' · ')} <span className={classes.from}>from closed</span>
    </span>
  );
}
