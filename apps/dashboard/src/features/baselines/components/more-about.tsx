import { List, Text } from '@mantine/core';
import { figureName } from '../../../shared/format/figure-names.js';
import { figureText } from '../../../shared/format/quantities.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { AssumedLink } from '../../../shared/ui/assumed-link.js';
import { fillText } from '../../../shared/format/fill.js';
import { texts } from '../texts.js';
import { Alternatives } from './alternatives.js';
import { NextRuns } from './next-runs.js';
import classes from './baselines.module.css';

interface MoreAboutProps {
  readonly teamId: string;
  readonly end: EndBaseline;
  readonly canChange: boolean;
}

/** One level down: what else would do, why this one, on the way there, and what is only assumed. */
export function MoreAbout({ teamId, end, canChange }: MoreAboutProps) {
  return (
    <details>
      <summary>{texts.more}</summary>
      <div className={classes.detail}>
        {end.alternatives.length > 0 && <Alternatives alternatives={end.alternatives} />}
        {end.reasons.length > 0 && (
          <div>
            <Text fw={600}>{texts.why}</Text>
            <List>
              {end.reasons.map((reason) => (
                <List.Item key={reason}>{wholeInChosenUnits(reason)}</List.Item>
              ))}
            </List>
          </div>
        )}
        {end.steps.length > 1 && (
          <div>
            <Text fw={600}>{texts.steps}</Text>
            <List type="ordered">
              {end.steps.map((step, index) => (
                <List.Item key={index}>{fillText(step)}</List.Item>
              ))}
            </List>
          </div>
        )}
        {end.sharpen !== null && end.sharpen.options.length > 0 && <NextRuns sharpen={end.sharpen} />}
        <div>
          <Text fw={600}>{texts.assumed}</Text>
          {end.assumed.length === 0 ? (
            <Text>{texts.nothingAssumed}</Text>
          ) : (
            <List>
              {end.assumed.map((input) => (
                <List.Item key={`${input.of} ${input.field}`}>
                  {figureName(input.field).label} {figureText(input.value, figureName(input.field).unit)}
                  {canChange && <AssumedLink teamId={teamId} input={input} />}
                </List.Item>
              ))}
            </List>
          )}
        </div>
      </div>
    </details>
  );
}
