import { Text } from '@mantine/core';
import { strokeMarks } from '../../../shared/format/stroke-marks.js';
import type { EndBaseline as EndAnswer } from '../../../shared/http/reads/baselines.js';
import { Warning } from '../../../shared/ui/note.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import { texts } from '../texts.js';
import { Advice } from './advice.js';
import { Evidence } from './evidence.js';
import { FillTable } from './fill-table.js';
import { MoreAbout } from './more-about.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './baselines.module.css';

interface EndBaselineProps {
  readonly teamId: string;
  readonly name: string;
  readonly end: EndAnswer;
  readonly canChange: boolean;
}

/** One end of a bike on this track: now against the baseline, in figures and to scale, and how far it is known. */
export function EndBaseline({ teamId, name, end, canChange }: EndBaselineProps) {
  const wanted = end.recommended ?? end.nearest;
  const wantedName = end.recommended === null ? texts.nearest : texts.baseline;
  return (
    <div className={classes.end} role="group" aria-label={name}>
      <FillTable
        name={name}
        now={end.current}
        wanted={wanted}
        wantedName={wantedName}
        isTooRisky={end.unmet.includes('risk')}
      />
      {end.current !== null && (
        <StrokeBar title={`${name} ${texts.strokeNow}`} {...strokeMarks(end, end.current)} />
      )}
      {wanted !== null && (
        <StrokeBar
          title={`${name} ${end.recommended === null ? texts.strokeNearest : texts.strokeBaseline}`}
          {...strokeMarks(end, wanted)}
        />
      )}
      {end.status === 'no limits' && (
        <Warning word={texts.noRecommendation}>{wholeInChosenUnits(end.message)}</Warning>
      )}
      {end.status === 'not feasible' && (
        <Warning word={texts.notFeasible}>
          {wholeInChosenUnits(end.message)} {end.unmet.length > 0 && texts.unmet(end.unmet.join(', '))}
        </Warning>
      )}
      {end.status === 'recommended' && <Text size="sm">{wholeInChosenUnits(end.message)}</Text>}
      <Advice end={end} />
      <Evidence evidence={end.evidence} />
      <MoreAbout teamId={teamId} end={end} canChange={canChange} />
    </div>
  );
}
