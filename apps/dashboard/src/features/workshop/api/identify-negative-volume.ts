import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type NegativeVolumeQuestion = components['schemas']['NegativeVolumeQuestionDto'];
export type NegativeVolumeAnswer = components['schemas']['NegativeVolumeAnswerDto'];

/** What the drop of pressure tells of the negative chamber. The same readings always tell the same. */
export const negativeVolumeQuery = (teamId: string, question: NegativeVolumeQuestion | null) =>
  queryOptions({
    queryKey: [...keys.springUnits(teamId), 'negative volume', question],
    queryFn: ({ signal }) => {
      if (question === null) throw new Error('Nothing is asked before a try is complete');
      return bodyOf(api.POST('/api/v1/spring/identify-negative-volume', { body: question, signal }));
    },
    enabled: question !== null,
    staleTime: Infinity,
  });
