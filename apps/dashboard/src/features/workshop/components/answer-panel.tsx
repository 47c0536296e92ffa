import { Stack, Text, Title } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import type { Readable } from '../../../shared/http/joined.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import { ErrorView } from '../../../shared/ui/error-view.js';
import { texts } from '../measure-texts.js';
import { Refusal } from './refusal.js';

interface AnswerPanelProps<Answer> {
  readonly title: string;
  /** What is still missing, while there is nothing to ask. */
  readonly missing: string;
  readonly isAsked: boolean;
  readonly query: Readable<Answer>;
  readonly children: (answer: Answer) => ReactNode;
}

/** Where an answer appears while readings are typed: what is missing, the wait, the refusal, the answer. */
export function AnswerPanel<Answer>(props: AnswerPanelProps<Answer>) {
  const headingId = useId();
  return (
    <section aria-labelledby={headingId} aria-live="polite">
      <Stack gap="sm">
        <Title order={3} id={headingId}>
          {props.title}
        </Title>
        <Content {...props} />
      </Stack>
    </section>
  );
}

function Content<Answer>({ missing, isAsked, query, children }: AnswerPanelProps<Answer>) {
  if (!isAsked) return <Text c="dimmed">{missing}</Text>;
  if (query.data !== undefined) return children(query.data);
  // Asking again what was refused would be refused again; the field says what is allowed.
  if (query.error instanceof ApiProblem) return <Refusal error={query.error} />;
  if (query.error !== null) return <ErrorView error={query.error} onRetry={() => void query.refetch()} />;
  return <Text c="dimmed">{texts.counting}</Text>;
}
