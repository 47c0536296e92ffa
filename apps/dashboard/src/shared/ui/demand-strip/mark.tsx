import type { DemandReading } from './scale.js';
import classes from './demand-strip.module.css';

const RADIUS_PX = 4;
const ARROW_PX = 11;
const ARROW_HALF_PX = 4.5;

interface MarkProps {
  readonly kind: DemandReading['kind'];
  readonly voided: boolean;
  readonly x: number;
  readonly y: number;
  readonly active?: boolean;
}

/** A reading: a dot; an arrow to the right for "at least", to the left for "at most"; hollow when voided. */
export function Mark({ kind, voided, x, y, active = false }: MarkProps) {
  const className = [classes.dot, voided && classes.hollow, active && classes.active]
    .filter(Boolean)
    .join(' ');
  if (kind === 'exact') return <circle className={className} cx={x} cy={y} r={RADIUS_PX} />;
  const tip = kind === 'atLeast' ? x + ARROW_PX : x - ARROW_PX;
  return (
    <path className={className} d={`M${x} ${y - ARROW_HALF_PX}L${tip} ${y}L${x} ${y + ARROW_HALF_PX}Z`} />
  );
}
