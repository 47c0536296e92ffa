import { useMutation, useQueryClient, type QueryKey } from '@tanstack/react-query';
import { useState } from 'react';
import { NoConnection } from './problem.js';
import { SubmissionKey } from './submission-key.js';

const RETRIES_ON_A_LOST_LINE = 2;

interface Submission<Message, Result> {
  readonly send: (message: Message, key: string) => Promise<Result>;
  /** What the pages must read again once it is taken. */
  readonly refreshes: readonly QueryKey[];
}

/** Sends a message once, however often the line breaks, and refreshes what it changed. */
export function useSubmission<Message, Result>({ send, refreshes }: Submission<Message, Result>) {
  const queries = useQueryClient();
  const [key] = useState(() => new SubmissionKey());
  return useMutation({
    mutationFn: (message: Message) => send(message, key.for(message)),
    retry: (failures, error) => error instanceof NoConnection && failures < RETRIES_ON_A_LOST_LINE,
    onSuccess: async () => {
      key.taken();
      await Promise.all(refreshes.map((queryKey) => queries.invalidateQueries({ queryKey })));
    },
  });
}
