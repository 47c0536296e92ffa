import { Text } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { ApiProblem } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Warning } from '../../../shared/ui/note.js';
import { previewQuery, type PlanSize } from '../api/make-plan.js';
import { statementWords } from '../model/statement-words.js';
import { texts } from '../texts.js';
import { Statement } from './statement.js';

interface PlanPreviewProps {
  readonly teamId: string;
  /** Null while no size is chosen. */
  readonly size: PlanSize | null;
}

/** Who types `12` does not want to know what 1 would tell, ms. */
const PAUSE_MS = 300;
const NO_SIZE: PlanSize = { arms: 2, riders: 1 };

/** What a plan of the chosen size can tell, before it is made. */
export function PlanPreview({ teamId, size }: PlanPreviewProps) {
  const [asked] = useDebouncedValue(size, PAUSE_MS);
  const preview = useQuery({ ...previewQuery(teamId, asked ?? NO_SIZE), enabled: asked !== null });
  const refused = preview.error instanceof ApiProblem ? preview.error.fields[0] : undefined;
  return (
    <div aria-live="polite" aria-busy={preview.isFetching}>
      {size === null && <Text c="dimmed">{texts.tellsNothingYet}</Text>}
      {size !== null && refused !== undefined && (
        <Warning word={`${texts.cannotSay}.`}>{texts.mustBe(refused.allowed)}</Warning>
      )}
      {size !== null && refused === undefined && <Failure error={preview.error} word={texts.cannotSay} />}
      {size !== null && preview.error === null && preview.data !== undefined && (
        <Statement
          words={statementWords({
            ...preview.data,
            riders: size.riders,
            marginPct: size.marginPct ?? 1,
          })}
          reckoned={preview.data.statement.sentences}
        />
      )}
    </div>
  );
}
