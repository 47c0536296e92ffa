import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type VolumeQuestion = components['schemas']['VolumeQuestionDto'];
export type VolumeAnswer = components['schemas']['VolumeAnswerDto'];

/** What the readings tell of the positive chamber. The same readings always tell the same. */
export const volumeQuery = (teamId: string, question: VolumeQuestion | null) =>
  queryOptions({
    queryKey: [...keys.springUnits(teamId), 'positive volume', question],
    queryFn: ({ signal }) => {
      if (question === null) throw new Error('Nothing is asked before a try is complete');
      return bodyOf(api.POST('/api/v1/spring/identify-volume', { body: question, signal }));
    },
    enabled: question !== null,
    staleTime: Infinity,
  });
