import { Button, Group, Stack, Text } from '@mantine/core';
import { FIGURE_NAMES } from '../../../shared/format/figure-names.js';
import { formatNumber } from '../../../shared/format/numbers.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useWriteMeasured } from '../api/write-measured.js';
import { texts } from '../measure-texts.js';
import { measuredUnit, type MeasuredFigure } from '../model/measured-unit.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './workshop.module.css';

const PRECONDITION_FAILED = 412;

interface WriteMeasuredProps {
  readonly teamId: string;
  readonly unit: SpringUnit;
  readonly figures: readonly MeasuredFigure[];
  readonly canWrite: boolean;
  /** Reads the unit again, after somebody else has changed it; settles when it is read. */
  readonly onLookAgain: () => Promise<void>;
}

/** What was measured beside what stands in the unit, and the way to write it there. */
export function WriteMeasured({ teamId, unit, figures, canWrite, onLookAgain }: WriteMeasuredProps) {
  const write = useWriteMeasured(teamId);
  const { error } = write;
  const isStale = error instanceof ApiProblem && error.status === PRECONDITION_FAILED;
  if (figures.length === 0) return <Text c="dimmed">{texts.nothingYet}</Text>;
  return (
    <Stack gap="md">
      <FigureTable figures={figures} />
      {canWrite ? <Text>{texts.changes}</Text> : <Text>{texts.mechanicOnly}</Text>}
      <Failure error={error} word={texts.notWritten} />
      {isStale && (
        <Group>
          <Text>{texts.stale}</Text>
          <Button
            variant="default"
            // The refusal stands until the new unit is here: a press before would be refused again.
            onClick={() => void onLookAgain().then(() => write.reset())}
          >
            {texts.lookAgain}
          </Button>
        </Group>
      )}
      {canWrite && (
        <Group className="ll-screen-only">
          <Button loading={write.isPending} onClick={() => write.mutate(measuredUnit(unit, figures))}>
            {texts.write}
          </Button>
        </Group>
      )}
      <Text role="status" fw={650}>
        {write.isSuccess && texts.written}
      </Text>
    </Stack>
  );
}

function FigureTable({ figures }: { figures: readonly MeasuredFigure[] }) {
  return (
    <table className={classes.table}>
      <thead>
        <tr>
          <th scope="col">{texts.figure}</th>
          <th scope="col">{texts.inUnit}</th>
          <th scope="col">{texts.measured}</th>
        </tr>
      </thead>
      <tbody>
        {figures.map(({ figure, before, after }) => (
          <tr key={figure}>
            <th scope="row">{FIGURE_NAMES[figure].label}</th>
            <td>{withUnit(formatNumber(before, 1), FIGURE_NAMES[figure].unit)}</td>
            <td>
              <strong>{withUnit(formatNumber(after, 1), FIGURE_NAMES[figure].unit)}</strong>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
